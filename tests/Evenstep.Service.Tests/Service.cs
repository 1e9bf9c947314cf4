using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Mvc.Testing;

namespace Evenstep.Service.Tests;

/// <summary>The service, running in the process of the tests.</summary>
public sealed class Service : WebApplicationFactory<Program>
{
    public async Task<Answer> PostAsync(string path, string body, string? contentType = "application/json", string accept = "*/*", string? language = null)
    {
        using var content = new StringContent(body, Encoding.UTF8);
        content.Headers.ContentType = contentType is null ? null : MediaTypeHeaderValue.Parse(contentType);
        using var client = CreateClient();
        client.DefaultRequestHeaders.Add("Accept", accept);
        if (language is not null)
        {
            client.DefaultRequestHeaders.TryAddWithoutValidation("Accept-Language", language);
        }

        using var response = await client.PostAsync(new Uri(path, UriKind.Relative), content);
        return await Answer.OfAsync(response);
    }

    public async Task<Answer> GetAsync(string path)
    {
        using var client = CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });
        using var response = await client.GetAsync(new Uri(path, UriKind.Relative));
        return await Answer.OfAsync(response);
    }
}

/// <summary>What the service answered.</summary>
public sealed record Answer(int Status, string? ContentType, string Body)
{
    /// <summary>What it is written in.</summary>
    public string? Language { get; init; }

    /// <summary>The headers that another answer might depend on.</summary>
    public string Vary { get; init; } = "";

    public JsonElement Json => JsonSerializer.Deserialize<JsonElement>(Body);

    /// <summary>The codes of the errors, by place.</summary>
    public string[] Errors =>
    [
        .. Json.GetProperty("errors").EnumerateObject()
            .SelectMany(place => place.Value.EnumerateArray().Select(error => $"{place.Name} {error.GetProperty("code").GetString()}")),
    ];

    public static async Task<Answer> OfAsync(HttpResponseMessage response) => new(
        (int)response.StatusCode, response.Content.Headers.ContentType?.MediaType, await response.Content.ReadAsStringAsync())
    {
        Language = response.Content.Headers.ContentLanguage is { Count: > 0 } languages ? string.Join(", ", languages) : null,
        Vary = string.Join(", ", response.Headers.Vary),
    };
}

/// <summary>Files of the repository that the tests share with the document and the README.</summary>
public static class Repository
{
    public static string Root { get; } = RootAbove(AppContext.BaseDirectory);

    public static string DocumentPath => Path.Combine(Root, "openapi", "evenstep.v1.json");

    public static string Example(string name) => File.ReadAllText(Path.Combine(Root, "openapi", "examples", $"{name}.json"));

    public static IEnumerable<string> Examples(string beginning) =>
        Directory.EnumerateFiles(Path.Combine(Root, "openapi", "examples"), $"{beginning}-*.json").Select(path => Path.GetFileNameWithoutExtension(path)!);

    private static string RootAbove(string directory) =>
        File.Exists(Path.Combine(directory, "Evenstep.slnx")) ? directory : RootAbove(Path.GetDirectoryName(directory)!);
}
