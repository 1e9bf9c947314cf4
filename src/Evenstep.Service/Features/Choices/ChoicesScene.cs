using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.Choices;

/// <summary>What the picture of choices shows: what there is, and each of them under it.</summary>
internal static class ChoicesScene
{
    public static LadderScene Of(RecommendationAsked asked, SolvedChoices solved, WorkBudget budget)
    {
        var before = Kit.Of(asked.Problem, []);
        return new LadderScene
        {
            Headline = new Sentence(solved.Found.All.IsEmpty ? "picture/infeasible" : "picture/choices", []),
            Remedies = PlanRemarks.RemediesOf(asked, solved.Found.Comfort),
            Stages = [new Stage(Stage.Kept, before), .. solved.Found.All.Select(choice => StageOf(choice, asked.Catalogue.Currency, budget))],
            Cautions = ChoicesRemarks.CautionsOf(solved, before),
        };
    }

    private static Stage StageOf(Choice choice, string currency, WorkBudget budget) => new(Stage.Equipped, choice.Kit)
    {
        Heading = new Sentence("picture/choice",
        [
            RemarkValue.Of("choices", choice.Codes.Select(ChoicesRemarks.NameOf).ToArray()),
            RemarkValue.Of("totalPrice", choice.Kit.TotalPrice),
            RemarkValue.Of(Sentence.Currency, currency),
            RemarkValue.Percent("comfortablePercent", 100 * choice.Kit.Figures.ComfortableShare),
        ]),
        Purchases = BuyingOrder.Of(choice.Kit, choice.Plan.Candidacy.Telescopes, budget),
    };
}
