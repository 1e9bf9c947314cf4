using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>One operation of the document.</summary>
/// <param name="Method">In lower case, as the document has it.</param>
/// <param name="Path">With its parameters in braces.</param>
/// <param name="Node">What the document says of it.</param>
internal sealed record ApiOperation(string Method, string Path, JsonObject Node)
{
    /// <summary>The media types that a body may have.</summary>
    public ImmutableArray<string> BodyTypes => [.. (Node["requestBody"]?["content"]?.AsObject() ?? []).Select(type => type.Key)];

    public ImmutableArray<(int Index, JsonObject Node)> Parameters =>
        [.. (Node["parameters"]?.AsArray() ?? []).Select((parameter, index) => (index, parameter!.AsObject()))];

    /// <summary>Of the schema of a body, as a JSON Pointer into the document.</summary>
    public string BodyPointer(string mediaType) => Pointer("requestBody", "content", mediaType, "schema");

    /// <summary>Of the schema of an answer's body.</summary>
    public string AnswerPointer(string status, string mediaType) => Pointer("responses", status, "content", mediaType, "schema");

    public string ParameterPointer(int index) => Pointer("parameters", FormattableString.Invariant($"{index}"), "schema");

    private string Pointer(params string[] steps) => string.Concat(
        steps.Prepend(Method).Prepend(Path).Prepend("paths")
            .Select(step => "/" + step.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)));
}

/// <summary>The committed OpenAPI document.</summary>
internal sealed class ApiDocument(string path)
{
    private const string ReferencePrefix = "#/components/schemas/";

    private readonly JsonObject root = JsonNode.Parse(File.ReadAllText(path))!.AsObject();

    public string FilePath => path;

    public IEnumerable<ApiOperation> Operations =>
        from described in root["paths"]!.AsObject()
        from operation in described.Value!.AsObject()
        where operation.Value is JsonObject node && node.ContainsKey("responses")
        select new ApiOperation(operation.Key, described.Key, operation.Value!.AsObject());

    /// <summary>A schema without a reference, and the name it is known by; null where it has none.</summary>
    public (JsonObject Schema, string? Name) Resolve(JsonObject schema)
    {
        if (schema["$ref"]?.GetValue<string>() is not { } reference)
        {
            return (schema, null);
        }

        var name = reference[ReferencePrefix.Length..];
        return (root["components"]!["schemas"]![name]!.AsObject(), name);
    }
}
