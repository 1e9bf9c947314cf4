using System.Text.Json.Nodes;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>A request that runs as it stands, from a file that the document, the tests and the README share.</summary>
internal sealed record Example(string Name, JsonNode Body)
{
    /// <summary>The files whose names begin so, in the order of their names.</summary>
    public static IEnumerable<Example> BeginningWith(string beginning) =>
        Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "openapi", "examples"), $"{beginning}-*.json")
            .Order(StringComparer.Ordinal)
            .Select(path => new Example(Path.GetFileNameWithoutExtension(path), JsonNode.Parse(File.ReadAllText(path))!));
}
