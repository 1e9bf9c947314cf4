using System.Text.Json;
using Evenstep.Service.Tests.Http.Authentication;

namespace Evenstep.Service.Tests.Pages;

/// <summary>What a check of the page found.</summary>
/// <param name="Check">Its name.</param>
/// <param name="Failure">What is wrong; null if nothing.</param>
/// <param name="Milliseconds">How long it took.</param>
internal sealed record Finding(string Check, string? Failure, double Milliseconds);

/// <summary>The service on a port of its own, with a browser that goes through all checks of the page once, with the first question.</summary>
public sealed class PageRun : IDisposable
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    private static readonly Keyed Key = new("page", "shop") { Scopes = "read" };

    private readonly Service service = new();
    private readonly Service keyed = Keyed.ServiceWith(Key);
    private readonly Lazy<Task<IReadOnlyList<Finding>>> findings;

    public PageRun() => findings = new(LookAsync);

    internal Task<IReadOnlyList<Finding>> Findings => findings.Value;

    /// <summary>Where the service listens.</summary>
    internal Uri Start() => service.Listen();

    public void Dispose()
    {
        service.Dispose();
        keyed.Dispose();
    }

    private async Task<IReadOnlyList<Finding>> LookAsync()
    {
        using var look = Browser.Look("run.mjs", Start(), keyed.Listen().ToString(), Key.Text);
        var lines = await look.StandardOutput.ReadToEndAsync();
        await look.WaitForExitAsync();
        return [.. lines.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonSerializer.Deserialize<Finding>(line, Options)!)];
    }
}
