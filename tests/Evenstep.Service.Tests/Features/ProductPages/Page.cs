using System.Text.Json;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.ProductPages;

/// <summary>What the service answered to whoever asked for a page.</summary>
internal sealed record Page(int Status, string Body)
{
    public string? ETag { get; init; }

    public string? CacheControl { get; init; }

    public string? Language { get; init; }

    public string Vary { get; init; } = "";

    public string? AllowedOrigin { get; init; }

    public T As<T>() => Reading.Read<T>(Body);

    public JsonElement Json => JsonSerializer.Deserialize<JsonElement>(Body);

    public static async Task<Page> GetAsync(HttpClient client, string path, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(path, UriKind.Relative));
        foreach (var (name, value) in headers)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using var response = await client.SendAsync(request);
        return new Page((int)response.StatusCode, await response.Content.ReadAsStringAsync())
        {
            ETag = response.Headers.TryGetValues("ETag", out var tags) ? tags.Single() : null,
            CacheControl = response.Headers.TryGetValues("Cache-Control", out var control) ? string.Join(", ", control) : null,
            Language = response.Content.Headers.ContentLanguage.SingleOrDefault(),
            Vary = string.Join(", ", response.Headers.Vary),
            AllowedOrigin = response.Headers.TryGetValues("Access-Control-Allow-Origin", out var origins) ? origins.Single() : null,
        };
    }
}
