using System.Text.Json;

namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>
/// A body that must be refused, and how: a row of <c>bad-bodies.json</c>. It differs from the valid body of its route by
/// <see cref="Change"/>, or is <see cref="Body"/> as it stands.
/// </summary>
public sealed record BadBody
{
    public required string Name { get; init; }

    public string Route { get; init; } = "recommendations";

    /// <summary>From JSON Pointer to the raw text to put there; null takes the field away.</summary>
    public Dictionary<string, string?>? Change { get; init; }

    public string? Body { get; init; }

    public string? ContentType { get; init; } = "application/json";

    public int Status { get; init; } = 400;

    public string Type { get; init; } = "invalid-request";

    /// <summary>All codes by place; null where there are none, or too many to write down.</summary>
    public Dictionary<string, string[]>? Errors { get; init; }

    /// <summary>How many errors are shown, if <see cref="Errors"/> does not say it.</summary>
    public int? Shown { get; init; }

    /// <summary>How many more there are.</summary>
    public int? More { get; init; }

    /// <summary>What the detail and the messages, taken together, must say.</summary>
    public string[] Words { get; init; } = [];

    public string Path => $"/v1/{Route}";

    public string Text => BodyPatch.Expand(Body ?? BodyPatch.Apply(TestFile.Valid(Route), Change!));

    public override string ToString() => Name;
}

/// <summary>The files beside these tests.</summary>
internal static class TestFile
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static IReadOnlyList<BadBody> BadBodies { get; } = Read<BadBody>("bad-bodies");

    /// <summary>The body that the rows of a route differ from.</summary>
    public static string Valid(string route) => Text($"valid-{route[..^1]}");

    public static T[] Read<T>(string name) => JsonSerializer.Deserialize<T[]>(Text(name), Options)!;

    private static string Text(string name) =>
        File.ReadAllText(Path.Combine(Repository.Root, "tests", "Evenstep.Service.Tests", "Contract", "Fields", $"{name}.json"));
}
