using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>A purchase problem reduced to what a solver must decide: choices, the views they make, and which repeat which.</summary>
internal sealed record PurchaseSpace(
    PurchaseProblem Problem, ImmutableArray<Choice> Choices, ImmutableArray<PossibleViews> Telescopes, OverlapTable Overlaps)
{
    /// <summary>The true field, in degrees, that some view of the kit must have because a wide view is wished for.</summary>
    public double? WishedFieldDeg { get; init; }

    public static PurchaseSpace Of(PurchaseProblem problem, Candidacy candidacy)
    {
        var choices = problem.Limits.MaxPurchases == 0 && problem.Demands.MustInclude.IsEmpty
            ? [] : Reduction.Of(problem, candidacy.Candidates);
        var views = PossibleViews.Of(problem, choices);
        var overlaps = OverlapTable.Of(problem, views);
        if (problem.Limits.AllowedOverlaps == 0)
        {
            views = [.. views.Select(one => one.Without(view => view is { Eyepiece: { } e, Barlow: { } b } && overlaps.Excludes(e, b)))];
        }

        return new PurchaseSpace(problem, choices, views, overlaps);
    }
}
