using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Tries values of one input outwards from the one given, on each side until the purchases change.</summary>
internal sealed class IntervalSearch(Plan plan, SolveWithin solve, WorkBudget budget)
{
    private readonly ImmutableHashSet<string> purchases = [.. plan.Purchases.Select(item => item.Id)];

    /// <summary>Of judging and checking an owned item in a telescope, which no solve counts: measured.</summary>
    private const long StepsPerOwnedItem = 8_000;

    private int tried;

    /// <summary>Null if the plan, or one of those compared with it, is not proved to be the best within the budget.</summary>
    /// <param name="given">The value given.</param>
    /// <param name="values">All values that may be tried, ascending, that given among them.</param>
    /// <param name="changed">The problem with another value; null if none is left.</param>
    public HeldInterval? Around(decimal given, ImmutableArray<decimal> values, Func<decimal, PurchaseProblem?> changed)
    {
        try
        {
            if (!plan.IsProved)
            {
                return null;
            }

            var (from, below) = Outwards(given, values.Where(value => value < given).Reverse(), changed);
            var (to, above) = Outwards(given, values.Where(value => value > given), changed);
            return new HeldInterval(from, to, tried, below, above);
        }
        catch (WorkLimitException)
        {
            return null;
        }
    }

    private (decimal Last, ChangedPlan? Changed) Outwards(decimal given, IEnumerable<decimal> values, Func<decimal, PurchaseProblem?> changed)
    {
        var last = given;
        foreach (var value in values)
        {
            tried++;
            var found = changed(value) is { } problem ? Proved(problem) : null;
            if (found is null || found.Outcome == Outcome.Infeasible || !purchases.SetEquals(found.Purchases.Select(item => item.Id)))
            {
                return (last, new ChangedPlan(value, found));
            }

            last = value;
        }

        return (last, null);
    }

    private Plan Proved(PurchaseProblem problem)
    {
        if (budget.IsSpent)
        {
            throw new WorkLimitException();
        }

        budget.Spend(StepsPerOwnedItem * problem.Owned.Length * problem.Telescopes.Length);
        var found = solve(problem, budget);
        return found.IsProved ? found : throw new WorkLimitException();
    }
}
