using System.Security.Cryptography;
using System.Text;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.Swagger;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>The OpenAPI document as it is served. It says the same as long as the service runs, and so is made once.</summary>
internal sealed class ServedDocument(IServiceScopeFactory scopes)
{
    private readonly Lock making = new();
    private Task<(byte[] Text, string Tag)>? made;

    /// <summary>The document, with its entity tag.</summary>
    public Task<(byte[] Text, string Tag)> GetAsync()
    {
        lock (making)
        {
            return made is { IsFaulted: false } ? made : made = MakeAsync();
        }
    }

    private async Task<(byte[] Text, string Tag)> MakeAsync()
    {
        await using var scope = scopes.CreateAsyncScope();
        var document = await scope.ServiceProvider.GetRequiredService<IAsyncSwaggerProvider>().GetSwaggerAsync(DocumentSetup.Version);
        var text = Encoding.UTF8.GetBytes(await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1));
        return (text, $"\"{Convert.ToHexStringLower(SHA256.HashData(text))}\"");
    }
}
