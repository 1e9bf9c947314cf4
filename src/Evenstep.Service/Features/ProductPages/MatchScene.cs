using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Answering.Recommendations;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>What the picture on an item's page shows: what there is, and what the item makes of it.</summary>
internal static class MatchScene
{
    public static LadderScene Of(RecommendationAsked asked, Item item)
    {
        var match = ItemMatch.Of(asked.Problem, item);
        return new LadderScene
        {
            Headline = VerdictWriter.Write(match, item, asked).Text,
            Purchases = [item],
            Stages = [new Stage(Stage.Kept, match.Before), new Stage(Stage.WithItem, match.After)],
            Cautions = KitRemarks.CautionsOfPurchases(match.After),
        };
    }
}
