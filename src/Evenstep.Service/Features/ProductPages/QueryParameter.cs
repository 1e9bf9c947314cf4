using System.Globalization;
using System.Text.Json.Nodes;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>A parameter of a page's query: a field of the body that the query amounts to, with the same bounds and the same faults.</summary>
/// <param name="Field">The field; the parameter has its name.</param>
/// <param name="Path">Where it stands in the body.</param>
internal sealed record QueryParameter(Field Field, params string[] Path)
{
    public string Name { get; init; } = Field.Name;

    /// <summary>Whether it may be given more than once, each time for one element of a list.</summary>
    public bool IsRepeated { get; init; }

    /// <summary>Makes JSON of what was given once.</summary>
    public Func<string, JsonNode> JsonOf { get; init; } = text => TextAsJson.Of(Field.AnyShape, text);

    public string Pointer => string.Concat(Path.Select(step => $"/{step}"));

    /// <summary>Puts what was given into a body.</summary>
    public void Put(JsonNode body, IReadOnlyList<string> texts)
    {
        foreach (var step in Path[..^1])
        {
            body = body is JsonArray list ? list[int.Parse(step, CultureInfo.InvariantCulture)]! : body[step] ??= new JsonObject();
        }

        body[Path[^1]] = IsRepeated ? new JsonArray([.. texts.Select(JsonOf)]) : JsonOf(texts[0]);
    }
}
