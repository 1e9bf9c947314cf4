using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Spending;

/// <summary>Writes a spending curve as the answer to a request.</summary>
internal static class SpendingCurveWriter
{
    /// <param name="asked">The request.</param>
    /// <param name="charted">The frontier.</param>
    /// <param name="infeasible">The plan that says why, if no set is allowed.</param>
    /// <param name="budget">Sees cancellation.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static SpendingCurveAnswer Write(RecommendationAsked asked, SolvedCurve charted, Solved? infeasible, WorkBudget budget)
    {
        var frontier = charted.Frontier;
        var curve = SpendingCurve.Of(frontier);
        var telescopes = Candidacy.Of(asked.Problem).Telescopes;
        var suggested = Kit.Of(asked.Problem, infeasible is null ? curve.Points[curve.SuggestedIndex].Purchases : []);
        return new SpendingCurveAnswer
        {
            Outcome = infeasible is not null ? Outcome.Infeasible : frontier.IsProved ? Outcome.Optimal : Outcome.BestFound,
            Catalogue = KitWriter.CatalogueOf(asked.Catalogue),
            Currency = asked.Catalogue.Currency,
            Points = PointsOf(asked.Problem, curve, telescopes),
            Notes = infeasible is not null
                ? [.. PlanRemarks.NotesOf(asked, infeasible, suggested, budget)]
                :
                [
                    .. KitRemarks.NotesOf(suggested),
                    .. PlanNotes.NotServed(asked.Problem, telescopes).Select(note => Phrase.Of("note", note)),
                    .. SpendingRemarks.NotesOf(asked, frontier, curve, suggested),
                ],
            Conflicts = infeasible?.Plan.Conflicts is { } conflicts ? ConflictWriter.Write(asked, conflicts) : null,
            Cautions = KitRemarks.CautionsOf(suggested),
            Solver = new SpendingSolverAnswer
            {
                Proved = frontier.IsProved,
                ProvedUpTo = frontier.ProvedUpTo is { } price ? Rounded.Money(price) : null,
                Limit = infeasible?.Plan.Limit ?? frontier.Limit,
                Milliseconds = Rounded.Milliseconds(charted.Took),
            },
        };
    }

    /// <summary>The points of a curve, as every answer writes them.</summary>
    /// <param name="problem">What the curve is of.</param>
    /// <param name="curve">The curve.</param>
    /// <param name="telescopes">Those that decide, by their indices: see <see cref="Candidacy.Telescopes"/>.</param>
    public static IReadOnlyList<SpendingPointAnswer> PointsOf(PurchaseProblem problem, SpendingCurve curve, ImmutableArray<int> telescopes) =>
        [.. curve.Points.Select((point, index) => PointOf(Kit.Of(problem, point.Purchases), point, telescopes, index == curve.SuggestedIndex))];

    private static SpendingPointAnswer PointOf(Kit kit, SpendingPoint point, ImmutableArray<int> telescopes, bool isSuggested)
    {
        var figures = KitWriter.FiguresOf(kit.FiguresIn(telescopes));
        return new SpendingPointAnswer
        {
            TotalPrice = Rounded.Money(point.TotalPrice),
            LargestStep = figures.LargestStep,
            MeanMismatchPercent = figures.MeanMismatchPercent,
            MeanExcessPercent = figures.MeanExcessPercent,
            ServedPercent = figures.ServedPercent,
            ComfortablePercent = figures.ComfortablePercent,
            ItemIds = [.. point.Purchases.Select(item => item.Id)],
            Suggested = isSuggested,
        };
    }
}
