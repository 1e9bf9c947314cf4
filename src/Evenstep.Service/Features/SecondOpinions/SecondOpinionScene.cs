using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Answering.Recommendations;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>What the picture of a second opinion shows: what there is, what the list makes of it, and what the advice does.</summary>
internal static class SecondOpinionScene
{
    public static LadderScene Of(SecondOpinionAsked asked, Plan plan, WorkBudget? budget = null)
    {
        var advice = RecommendationScene.Of(asked.Planning, plan, budget);
        var list = new Stage(Stage.Listed, Kit.Of(asked.Planning.Problem, asked.ShoppingList));
        return advice with { Stages = [advice.Stages[0], list, .. advice.Stages.Skip(1)] };
    }
}
