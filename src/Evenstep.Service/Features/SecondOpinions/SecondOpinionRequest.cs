using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>A request for a second opinion as its JSON says it; null for what is missing or faulty.</summary>
internal sealed record SecondOpinionRequest
{
    public required RecommendationRequest Planning { get; init; }

    public required IReadOnlyList<string?>? ShoppingList { get; init; }
}

/// <summary>The table of fields of a request for a second opinion.</summary>
internal static class SecondOpinionFields
{
    /// <summary>More than anybody may buy, so that a list may be too long and be told so.</summary>
    public const int MostListed = 20;

    public static readonly Field<IReadOnlyList<string?>> ShoppingList = Make.ListOf(
        "shoppingList", RecommendationFields.ItemId, 0, MostListed, "Ids of the items of the catalogue that one means to buy, each once.", differ: true);

    public static readonly ObjectShape<SecondOpinionRequest> Body = new(
        "SecondOpinionRequest",
        "A request for a recommendation, and what one means to buy.",
        [.. RecommendationFields.OfPlanning, ShoppingList.Required()],
        values => new SecondOpinionRequest { Planning = RecommendationFields.Build(values), ShoppingList = values.Of(ShoppingList) });
}
