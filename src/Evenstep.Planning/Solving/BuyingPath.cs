using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving;

/// <summary>A purchase on a buying path.</summary>
/// <param name="Item">What to buy.</param>
/// <param name="TotalPriceSoFar">Of it and all before it.</param>
/// <param name="Loss">By what share the largest step is then wider than the least that the same money could have bought, a
/// step that is enough counting as such; 0 where no set of that price is allowed.</param>
public sealed record BuyingStep(Item Item, decimal TotalPriceSoFar, double Loss);

/// <summary>
/// The no-regret path: of all orders of all allowed sets that survive the plan's first stage (they keep to its largest step, and
/// grant the wish for a wide view where any allowed set does), the cheapest whose greatest loss is within the leeway of the
/// least attainable.
/// </summary>
/// <param name="Plan">The plan at the full budget, whose first stage the path's end survives.</param>
/// <param name="Frontier">What every budget buys at best, by which losses are judged.</param>
/// <param name="Steps">In buying order. Empty if buying nothing is the path, or if no set is allowed.</param>
/// <param name="LeastGreatestLoss">The least greatest loss of any path; null if no set is allowed, or where the work limit
/// came before it was known.</param>
/// <param name="IsProved">Whether no path is better. If not, it is the best that was found.</param>
public sealed record BuyingPath(Plan Plan, SpendingFrontier Frontier, ImmutableArray<BuyingStep> Steps, double? LeastGreatestLoss, bool IsProved)
{
    /// <summary>The limit that ended the search; null if none did.</summary>
    public ReachedLimit? Limit { get; init; }

    /// <summary>0 for the empty path.</summary>
    public double GreatestLoss => Steps.Select(step => step.Loss).DefaultIfEmpty(0).Max();
}
