using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>A request for a second opinion as its JSON says it; null for what is missing or faulty.</summary>
[Schema("SecondOpinionRequest", "A request for a recommendation, and what one means to buy.")]
internal sealed record SecondOpinionRequest
{
    /// <summary>More than anybody may buy, so that a list may be too long and be told so.</summary>
    public const int MostListed = 20;

    [FieldsOf<RecommendationRequest>]
    public RecommendationRequest Planning { get; init; } = new();

    [List(0, MostListed, Differ = true)]
    [Text("Ids of the items of the catalogue that one means to buy, each once.", Most = ItemRequest.MostIdCharacters, IsRequired = true)]
    public IReadOnlyList<string?>? ShoppingList { get; init; }
}
