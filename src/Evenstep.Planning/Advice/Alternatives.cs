using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;

namespace Evenstep.Planning.Advice;

/// <summary>What to buy where one purchase of a plan cannot be had.</summary>
/// <param name="Without">The purchase.</param>
/// <param name="Problem">The same problem, with that item excluded by request.</param>
/// <param name="Plan">The best plan then; null if the work limit ended before any allowed set was found.</param>
public sealed record Alternative(Item Without, PurchaseProblem Problem, Plan? Plan);

/// <summary>Plans again, once without each purchase.</summary>
public static class Alternatives
{
    /// <summary>
    /// An alternative to each purchase of a plan, in the plan's order. They share one request's work in equal parts, so that
    /// all of them together take no more than the plan itself may.
    /// </summary>
    /// <param name="problem">What was planned.</param>
    /// <param name="plan">What came of it.</param>
    /// <param name="budget">The work and memory that all alternatives together may take.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static ImmutableArray<Alternative> Of(PurchaseProblem problem, Plan plan, WorkBudget budget) =>
        [.. plan.Purchases.Select((item, index) => To(item, problem, budget.Part(budget.UnitsLeft / (plan.Purchases.Length - index))))];

    private static Alternative To(Item item, PurchaseProblem problem, WorkBudget budget)
    {
        var preferences = problem.Preferences with { Exclude = problem.Preferences.Exclude.Add(item.Id) };
        var without = problem with { Preferences = preferences };
        try
        {
            return new Alternative(item, without, Planner.Solve(without, budget));
        }
        catch (WorkLimitException)
        {
            return new Alternative(item, without, Plan: null);
        }
    }
}
