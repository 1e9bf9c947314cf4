using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving;

/// <summary>
/// Checks a frontier against its problem in plain code: every rule of an allowed set, every price and step claimed, and that
/// no point beats another. It cannot see that no better set exists.
/// </summary>
public static class SpendingReferee
{
    /// <summary>How far a claimed step may be from the one worked out here.</summary>
    private const double ClaimTolerance = 1e-6;

    /// <summary>One sentence for each thing wrong with the frontier; empty for a good one.</summary>
    public static ImmutableArray<string> FaultsOf(SpendingFrontier frontier) =>
    [
        .. FaultsOfPoints(frontier),
        .. frontier.Points.Zip(frontier.Points.Skip(1)).Where(pair => IsBeaten(pair.First, pair.Second))
            .Select(pair => $"The set for {pair.Second.TotalPrice} is no better than that for {pair.First.TotalPrice}."),
    ];

    private static bool IsBeaten(SpendingPoint cheaper, SpendingPoint dearer) =>
        dearer.TotalPrice <= cheaper.TotalPrice || !dearer.LargestStep.Below(cheaper.LargestStep);

    private static IEnumerable<string> FaultsOfPoints(SpendingFrontier frontier)
    {
        var telescopes = Candidacy.Of(frontier.Problem).Telescopes;
        return frontier.Points.SelectMany(point => FaultsOf(frontier.Problem, telescopes, point));
    }

    private static IEnumerable<string> FaultsOf(PurchaseProblem problem, ImmutableArray<int> telescopes, SpendingPoint point)
    {
        var kit = Kit.Of(problem, point.Purchases);
        if (kit.TotalPrice != point.TotalPrice)
        {
            yield return $"The price is {kit.TotalPrice}, not {point.TotalPrice}.";
        }

        var largestStep = Step.Max(problem.EnoughStep, kit.FiguresIn(telescopes).LargestStep);
        if (Math.Abs(largestStep.Ln - point.LargestStep.Ln) > ClaimTolerance)
        {
            yield return $"The largest step is {largestStep}, not {point.LargestStep}.";
        }

        foreach (var breach in Breaches.Of(kit))
        {
            yield return breach.ToString();
        }

        foreach (var exclusion in Candidacy.Of(problem, point.Purchases).Exclusions)
        {
            yield return $"{exclusion.Item} is no candidate: {exclusion.Reason}.";
        }
    }
}
