using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>What a visitor has, or has in the cart, that is not of the catalogue, such as a tripod: it is left aside, and named.</summary>
internal static class IgnoredOwned
{
    /// <summary>Takes out of a body what is owned and the catalogue does not know.</summary>
    /// <param name="body">The body that a query was put into.</param>
    /// <param name="catalogue">The catalogue; null for none.</param>
    /// <returns>The note that names it; null if there is nothing.</returns>
    public static RemarkAnswer? TakeOut(JsonObject body, Catalogue? catalogue)
    {
        // A list that is too long, and what can be no id, are refused like any other.
        if (catalogue is null || body["owned"] is not JsonArray { Count: <= PurchaseProblem.MostOwned } owned)
        {
            return null;
        }

        JsonNode[] ignored = [.. owned.OfType<JsonNode>().Where(item => IdOf(item) is { } id && !catalogue.Knows(id))];
        foreach (var item in ignored)
        {
            owned.Remove(item);
        }

        var ids = ignored.Select(item => IdOf(item)!).Distinct().ToArray();
        return ids.Length == 0 ? null : Phrase.Of("note", new Remark("owned-ignored", [RemarkValue.Of("itemIds", ids)]));
    }

    /// <summary>Null for what can be no id.</summary>
    private static string? IdOf(JsonNode item) =>
        item["id"] is JsonValue value && value.GetValueKind() == JsonValueKind.String
        && value.GetValue<string>() is { Length: > 0 and <= ItemRequest.MostIdCharacters } id
        && !id.Any(char.IsControl) && !id.Any(char.IsSurrogate)
            ? id
            : null;
}
