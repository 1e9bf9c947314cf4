using System.Collections.Concurrent;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Tests.Answers;
using Evenstep.Service.Tests.Http.OpenApi;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Evenstep.Service.Tests;

/// <summary>The service, running in the process of the tests.</summary>
public sealed class Service : WebApplicationFactory<Program>
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly DataFolder data;
    private readonly bool keepsData;
    private readonly (string Key, string Value)[] settings;

    public Service()
        : this(null)
    {
    }

    /// <summary>With a folder of data that others may have used before, and settings of its own.</summary>
    internal Service(DataFolder? data, params (string Key, string Value)[] settings)
    {
        this.data = data ?? new DataFolder();
        keepsData = data is not null;
        this.settings = settings;
    }

    /// <summary>Whether it is to be taken into use only once what is stored has been read.</summary>
    internal bool Waits { get; init; } = true;

    /// <summary>Puts other parts in place of its own.</summary>
    internal Action<IServiceCollection> Replace { get; init; } = _ => { };

    public async Task<Answer> SendAsync(
        HttpMethod method, string path, string? body = null, string contentType = "application/json", params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative));
        request.Content = body is null ? null : new StringContent(body, Encoding.UTF8, MediaTypeHeaderValue.Parse(contentType));
        foreach (var (name, value) in headers)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using var client = CreateClient();
        using var response = await client.SendAsync(request);
        return await Answer.OfAsync(response);
    }

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

    /// <summary>
    /// Listens at a free port of the loopback address, which it gives. The port is a setting from the beginning: the factory
    /// would set it while the program is starting already, which fails now and then.
    /// </summary>
    internal Uri Listen()
    {
        UseKestrel();
        StartServer();
        return ClientOptions.BaseAddress;
    }

    /// <summary>Until the storage is read, no service can tell whether there is some catalogue.</summary>
    protected override IHost CreateHost(IHostBuilder builder)
    {
        var host = base.CreateHost(builder);
        Assert.True(!Waits || SpinWait.SpinUntil(() => host.Services.GetRequiredService<CatalogueRegistry>().IsWhole, Patience));
        return host;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        data.Configure(builder);
        builder.UseSetting(WebHostDefaults.ServerUrlsKey, "http://127.0.0.1:0");
        builder.ConfigureServices(services => services.AddSingleton<IStartupFilter, DocumentGuard>());
        builder.ConfigureTestServices(Replace);
        foreach (var (key, value) in settings)
        {
            builder.UseSetting(key, value);
        }
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (!keepsData)
        {
            data.Dispose();
        }
    }
}

/// <summary>A folder of its own for what a service stores.</summary>
internal sealed class DataFolder : IDisposable
{
    private static readonly ConcurrentBag<DataFolder> All = [];

    /// <summary>A service whose start is stopped may make its folder again after it was deleted; none outlasts the process.</summary>
    static DataFolder() => AppDomain.CurrentDomain.ProcessExit += (_, _) =>
    {
        foreach (var folder in All)
        {
            folder.Dispose();
        }
    };

    public DataFolder() => All.Add(this);

    public string Path { get; } = Directory.CreateTempSubdirectory("evenstep-").FullName;

    public void Configure(IWebHostBuilder builder) => builder.UseSetting(StorageFolder.Key, Path);

    public void Dispose()
    {
        if (Directory.Exists(Path))
        {
            Directory.Delete(Path, recursive: true);
        }
    }
}

/// <summary>What the service answered.</summary>
public sealed record Answer(int Status, string? ContentType, string Body)
{
    /// <summary>What it is written in.</summary>
    public string? Language { get; init; }

    /// <summary>The version of what it shows.</summary>
    public string? ETag { get; init; }

    /// <summary>The headers that another answer might depend on.</summary>
    public string Vary { get; init; } = "";

    /// <summary>The types that a PATCH takes.</summary>
    public string? AcceptPatch { get; init; }

    public string? Location { get; init; }

    public string? RetryAfter { get; init; }

    public JsonElement Json => JsonSerializer.Deserialize<JsonElement>(Body);

    /// <summary>The codes of the errors, by pointer.</summary>
    public string[] Errors => Problem.Codes();

    internal ProblemDetails Problem => As<ProblemDetails>();

    /// <summary>The items of a catalogue, as they are stored.</summary>
    internal JsonElement[] Items => [.. Json.GetProperty("items").EnumerateArray()];

    internal T As<T>() => Reading.Read<T>(Body);

    public static async Task<Answer> OfAsync(HttpResponseMessage response) => new(
        (int)response.StatusCode, response.Content.Headers.ContentType?.MediaType, await response.Content.ReadAsStringAsync())
    {
        Language = response.Content.Headers.ContentLanguage is { Count: > 0 } languages ? string.Join(", ", languages) : null,
        ETag = response.Headers.ETag?.ToString(),
        AcceptPatch = response.Headers.TryGetValues("Accept-Patch", out var types) ? string.Join(", ", types) : null,
        Location = response.Headers.Location?.ToString(),
        RetryAfter = response.Headers.RetryAfter?.ToString(),
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
