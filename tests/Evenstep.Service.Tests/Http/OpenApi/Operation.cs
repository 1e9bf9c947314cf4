using System.Text.Json;

namespace Evenstep.Service.Tests.Http.OpenApi;

/// <summary>An operation of the committed document, with an address that it answers.</summary>
public sealed record Operation(string Method, string Path)
{
    /// <summary>The id of the catalogue that is changed.</summary>
    public const string Stored = "small-shop";

    private static readonly string[] OfHealth = ["/health/"];

    /// <summary>The committed document.</summary>
    public static JsonElement Document { get; } = JsonSerializer.Deserialize<JsonElement>(File.ReadAllText(Repository.DocumentPath));

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Operation> All { get; } =
    [
        .. Document.GetProperty("paths").EnumerateObject()
            .SelectMany(path => path.Value.EnumerateObject().Select(operation => new Operation(operation.Name.ToUpperInvariant(), path.Name))),
    ];

    /// <summary>Those under the version of the interface: whoever runs the service asks for the others.</summary>
    public static IEnumerable<Operation> OfInterface => All.Where(operation => !OfHealth.Any(operation.Path.StartsWith));

    /// <summary>An address that the operation answers: of what nobody can change, or else of a catalogue that has yet to be stored.</summary>
    public string Address => Path.Replace("{id}", Method == "GET" ? "demo" : Stored, StringComparison.Ordinal)
        .Replace("{telescopeId}", "capstan-152", StringComparison.Ordinal)
        .Replace("{itemId}", Method == "GET" ? "kelpstone-5-5" : "gullwing-15", StringComparison.Ordinal)
        + (Path.EndsWith("/match", StringComparison.Ordinal) ? "?telescope=capstan-152" : "");

    /// <summary>The same with one more parameter.</summary>
    public string AddressWith(string parameter) => $"{Address}{(Address.Contains('?', StringComparison.Ordinal) ? '&' : '?')}{parameter}";

    public override string ToString() => $"{Method} {Path}";
}
