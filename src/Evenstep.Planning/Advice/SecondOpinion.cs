using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What somebody means to buy, judged beside a plan for the same problem.</summary>
/// <param name="List">The kit with the list bought.</param>
/// <param name="Breaches">Every rule of an allowed set that the list breaks.</param>
/// <param name="Exclusions">The items of the list that are no candidates, in ordinal order of ids.</param>
/// <param name="Difference">How the list's kit differs from the plan's; null if the plan is infeasible.</param>
public sealed record SecondOpinion(
    Kit List, ImmutableArray<Breach> Breaches, ImmutableArray<Exclusion> Exclusions, KitDifference? Difference)
{
    /// <param name="problem">What was planned for.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="list">Items of the problem's catalogue, each at most once, in any order.</param>
    public static SecondOpinion Of(PurchaseProblem problem, Plan plan, IEnumerable<Item> list)
    {
        ImmutableArray<Item> items = [.. list.OrderBy(item => item.Id, StringComparer.Ordinal)];
        var kit = Kit.Of(problem, items);
        return new SecondOpinion(
            kit,
            [.. Purchases.Breaches.Of(kit)],
            Candidacy.Of(problem, items).Exclusions,
            plan.Outcome == Outcome.Infeasible ? null : KitDifference.Between(kit, Kit.Of(problem, plan.Purchases)));
    }
}

/// <summary>How one kit differs from another: its figures minus the other's.</summary>
/// <param name="TotalPrice">What more its purchases cost.</param>
/// <param name="LargestStep">As a ratio; null where either kit has nothing to look through.</param>
/// <param name="MeanMismatch">Of the means as ratios, exp of the logarithm; null likewise.</param>
/// <param name="ServedShare">From -1 to 1.</param>
/// <param name="ComfortableShare">From -1 to 1.</param>
public sealed record KitDifference(decimal TotalPrice, double? LargestStep, double? MeanMismatch, double ServedShare, double ComfortableShare)
{
    public static KitDifference Between(Kit kit, Kit other)
    {
        var (one, two) = (kit.Figures, other.Figures);
        var bothShow = one.HasViews && two.HasViews;
        return new KitDifference(
            kit.TotalPrice - other.TotalPrice,
            bothShow ? one.LargestStep.Ratio - two.LargestStep.Ratio : null,
            bothShow ? Math.Exp(one.MeanMismatch) - Math.Exp(two.MeanMismatch) : null,
            one.ServedShare - two.ServedShare,
            one.ComfortableShare - two.ComfortableShare);
    }
}
