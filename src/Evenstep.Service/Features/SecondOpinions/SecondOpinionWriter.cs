using Evenstep.Planning.Advice;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Contract.Languages;
using Evenstep.Planning.Budgets;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>Writes a second opinion as the answer to a request.</summary>
internal static class SecondOpinionWriter
{
    public static SecondOpinionAnswer Write(SecondOpinionAsked asked, Solved solved, WorkBudget? budget = null)
    {
        var opinion = SecondOpinion.Of(asked.Planning.Problem, solved.Plan, asked.ShoppingList);
        return new SecondOpinionAnswer
        {
            List = ListOf(opinion, asked.Planning),
            Advice = RecommendationWriter.Write(asked.Planning, solved, budget),
            Difference = DifferenceOf(opinion.Difference),
        };
    }

    private static ListAnswer ListOf(SecondOpinion opinion, RecommendationAsked planning)
    {
        var kit = opinion.List;
        return new ListAnswer
        {
            TotalPrice = Rounded.Money(kit.TotalPrice),
            After = KitWriter.FiguresOf(kit.Figures),
            Telescopes = [.. kit.Ladders.Select(ladder => AssessedTelescopeWriter.Write(ladder, planning.Problem.EnoughStep, planning.Targets))],
            Breaches = [.. opinion.Breaches.SelectMany(breach => BreachWriter.Write(breach, kit, planning.Catalogue))],
            Exclusions = opinion.Exclusions.ToDictionary(exclusion => exclusion.Item.Id, exclusion => exclusion.Reason, StringComparer.Ordinal),
            Demands = KitWriter.FramingsOf(kit),
            Cautions = KitRemarks.CautionsOf(kit),
        };
    }

    private static DifferenceAnswer DifferenceOf(KitDifference? difference) => new()
    {
        TotalPrice = difference is null ? null : Rounded.Money(difference.TotalPrice),
        LargestStep = difference?.LargestStep is { } step ? Rounded.Ratio(step) : null,
        MeanMismatchPercent = difference?.MeanMismatch is { } mean ? Rounded.Percent(100 * mean) : null,
        ServedPercent = difference is null ? null : Rounded.Percent(100 * difference.ServedShare),
        ComfortablePercent = difference is null ? null : Rounded.Percent(100 * difference.ComfortableShare),
    };
}
