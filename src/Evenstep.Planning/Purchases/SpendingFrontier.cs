using System.Collections.Immutable;
using Evenstep.Planning.Budgets;

namespace Evenstep.Planning.Purchases;

/// <summary>A set that no allowed set beats: none is at once no dearer and narrower in its largest step.</summary>
/// <param name="Purchases">In ordinal order of ids.</param>
/// <param name="TotalPrice">Theirs.</param>
/// <param name="LargestStep">The kit's largest step over the telescopes that count, or of the step that is enough
/// where that is larger.</param>
public sealed record SpendingPoint(ImmutableArray<Item> Purchases, decimal TotalPrice, Step LargestStep);

/// <summary>What every budget could buy at best, in largest steps alone.</summary>
/// <param name="Problem">Its budget is where the frontier ends; its wish for a wide view is left aside.</param>
/// <param name="Points">Each attainable step with its least price, the cheapest first; of sets equal in both, the one of
/// least mean excess, then one by a fixed rule. Empty if no set is allowed.</param>
/// <param name="ProvedUpTo">All sets up to this price have been looked at; null if the work limit came before any price.
/// Beyond it the points are allowed sets, but there may be better ones.</param>
public sealed record SpendingFrontier(PurchaseProblem Problem, ImmutableArray<SpendingPoint> Points, decimal? ProvedUpTo)
{
    /// <summary>The limit that ended the search; null if none did.</summary>
    public ReachedLimit? Limit { get; init; }

    public bool IsProved => ProvedUpTo >= Problem.Limits.Budget;

    /// <summary>The least largest step that so much money buys; null if no set of at most that price is allowed.</summary>
    public Step? LeastStepFor(decimal money) => PointFor(money)?.LargestStep;

    /// <summary>The best that so much money buys; null if no set of at most that price is allowed.</summary>
    public SpendingPoint? PointFor(decimal money) => Points.LastOrDefault(point => point.TotalPrice <= money);
}
