using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>What the picture of a recommendation shows: what there is, and over against it what it becomes.</summary>
internal static class RecommendationScene
{
    public static LadderScene Of(RecommendationAsked asked, Plan plan, WorkBudget? budget = null)
    {
        var before = Kit.Of(asked.Problem, []);
        var after = plan.Purchases.IsEmpty ? null : Kit.Of(asked.Problem, plan.Purchases);
        return new LadderScene
        {
            Headline = HeadlineOf(asked, plan, after),
            Remedies = PlanRemarks.RemediesOf(asked, plan),
            Purchases = after is null ? [] : BuyingOrder.Of(after, plan.Candidacy.Telescopes, budget),
            Stages = after is null ? [new Stage(Stage.Kept, before)] : [new Stage(Stage.Kept, before), new Stage(Stage.Equipped, after)],
            Cautions = KitRemarks.CautionsOf(after ?? before),
        };
    }

    private static Sentence HeadlineOf(RecommendationAsked asked, Plan plan, Kit? after) => plan.Outcome switch
    {
        Outcome.Infeasible => new Sentence("picture/infeasible", []),
        Outcome.NothingWorthwhile => new Sentence("picture/nothing-worthwhile", []),
        _ => new Sentence(plan.IsProved ? "picture/to-buy" : "picture/to-buy/best-found",
        [
            RemarkValue.Of("totalPrice", after?.TotalPrice ?? 0m),
            RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency),
        ]),
    };
}
