using System.Text.Json;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>What is to change of one item.</summary>
/// <param name="Id">Which item; null where that is not said, or not rightly.</param>
/// <param name="Patch">A JSON Merge Patch of the item.</param>
/// <param name="At">Where it stands, for the places of faults.</param>
internal sealed record ItemChange(string? Id, JsonElement Patch, RequestPointer At)
{
    /// <summary>A change that names its item itself.</summary>
    public static ItemChange Naming(JsonElement patch, RequestPointer at)
    {
        var id = patch.ValueKind == JsonValueKind.Object
            && ErrorText.Find(patch, FieldName.Of(nameof(ItemRequest.Id))) is { ValueKind: JsonValueKind.String } text
            ? ErrorText.TextOf(text)
            : null;
        return new ItemChange(id, patch, at);
    }
}
