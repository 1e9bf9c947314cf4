using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Answering.Spending;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>Plans for somebody who names no budget: the point of the spending curve that is suggested, or the best set if that
/// point buys nothing.</summary>
internal sealed class SuggestionHandler(RefereedSpending spending, RecommendationHandler recommendations, ServiceMeter meter)
{
    /// <summary>The plan, and what is worth saying of the curve that it was chosen from.</summary>
    /// <param name="asked">Its budget is the most that anybody may have.</param>
    /// <param name="body">What it was read from.</param>
    /// <param name="cancellationToken">Ends the work.</param>
    public async Task<(Solved Solved, IReadOnlyList<RemarkAnswer> Notes)> SolveAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, CancellationToken cancellationToken)
    {
        var charted = await spending.SolveAsync(new PlanningCase(asked.Problem, asked.Catalogue, body), cancellationToken);
        meter.Solved(charted.Took);
        var curve = SpendingCurve.Of(charted.Frontier);
        if (curve.Points.IsEmpty || curve.Points[curve.SuggestedIndex].Purchases.IsEmpty)
        {
            return await BestAsync(asked, body, cancellationToken);
        }

        var plan = PlanOf(charted.Frontier, curve.Points[curve.SuggestedIndex]);
        return (
            new Solved(plan, charted.Took),
            [.. SpendingRemarks.NotesOf(asked, charted.Frontier, curve, Kit.Of(asked.Problem, plan.Purchases), hasBudget: false)]);
    }

    /// <summary>
    /// The best set there is. A curve that begins by falling slowly has no knee but its first point, and one that looks at
    /// largest steps alone may have no other; neither shows that nothing is worth its money. If no set is allowed, the plan says why.
    /// </summary>
    private async Task<(Solved Solved, IReadOnlyList<RemarkAnswer> Notes)> BestAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, CancellationToken cancellationToken)
    {
        var solved = await recommendations.SolveAsync(asked, body, cancellationToken);
        return (
            solved,
            solved.Plan is not { IsProved: true, Purchases.IsEmpty: false }
                ? []
                : [SpendingRemarks.BestSet(asked, Kit.Of(asked.Problem, solved.Plan.Purchases))]);
    }

    /// <summary>The point as a plan: of all sets of at most its price none has a less largest step.</summary>
    private static Plan PlanOf(SpendingFrontier frontier, SpendingPoint point)
    {
        var problem = frontier.Problem;
        var enough = 2 * problem.EnoughMismatch;
        var step = Math.Max(enough, point.LnLargestStep);
        return new Plan
        {
            Outcome = frontier.IsProved ? Outcome.Optimal : Outcome.BestFound,
            Purchases = point.Purchases,
            Candidacy = Candidacy.Of(problem),
            Values = new StageValues(
                step,
                frontier.ProvedUpTo >= point.TotalPrice ? step : enough,
                Kit.Of(problem, point.Purchases).Figures.MeanExcess,
                GreatestQuality: null,
                new PreferenceScore(problem).Of(point.Purchases)),
        };
    }
}
