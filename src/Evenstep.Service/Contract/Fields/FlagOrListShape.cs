using System.Text.Json;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>Yes, no, or a list that says more exactly what is meant.</summary>
/// <param name="Flag">Null if a list was given.</param>
/// <param name="List">Null if yes or no was given; a faulty element is null.</param>
internal sealed record FlagOrList<T>(bool? Flag, IReadOnlyList<T?>? List);

/// <summary>True, false or a list.</summary>
internal sealed class FlagOrListShape<T>(Shape<T> element, int most) : Shape<FlagOrList<T>>
{
    private readonly FlagShape flag = new();
    private readonly ListShape<T> list = new(element, 0, most);

    public override ErrorMessage Allowed => ErrorMessage.Of("error/allowed/either", ("first", flag.Allowed), ("second", list.Allowed));

    public override FlagOrList<T>? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.True or JsonValueKind.False:
                return new FlagOrList<T>(flag.Read(value, pointer, faults), null);
            case JsonValueKind.Array:
                return new FlagOrList<T>(null, list.Read(value, pointer, faults));
            default:
                ReportWrongType(value, pointer, faults);
                return null;
        }
    }

    /// <summary>The schema of the list, which says nothing of a flag.</summary>
    public override IOpenApiSchema Describe(OpenApiDocument document)
    {
        var schema = (OpenApiSchema)list.Describe(document);
        schema.Type |= JsonSchemaType.Boolean;
        return schema;
    }
}
