using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Solving;

/// <summary>Finds the best set of purchases and proves it.</summary>
public static class Planner
{
    /// <summary>Of a budget so much is the search's at most; the rest is the model's.</summary>
    private const double ShareOfSearch = 0.6;

    /// <summary>The plan for a problem: the same for the same problem, whatever the order of its items.</summary>
    /// <param name="problem">What to plan.</param>
    /// <param name="budget">The work and memory that it may take.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    /// <exception cref="WorkLimitException">The budget ended before any allowed set was found, and before it was proved
    /// that there is none.</exception>
    public static Plan Solve(PurchaseProblem problem, WorkBudget budget)
    {
        var part = budget.Part(ShareOfSearch * budget.UnitsLeft);
        var searched = SearchEngine.Solve(problem, long.MaxValue, part);
        if (searched.Plan is { } plan)
        {
            return plan;
        }

        var ended = EndOf(problem, searched, budget);
        return ended.Outcome == Outcome.BestFound || ended.Conflicts is { Nearest.IsDecided: false } or { IsTogetherDecided: false }
            ? ended with { Limit = budget.Reached ?? part.Reached ?? ReachedLimit.Work }
            : ended;
    }

    /// <summary>What the model makes of it; or what the search has found, if the model finds nothing better before its work ends.</summary>
    private static Plan EndOf(PurchaseProblem problem, SearchResult searched, WorkBudget budget)
    {
        try
        {
            var modelled = ModelEngine.Solve(problem, budget, searched.HeadStart);
            return modelled.Outcome == Outcome.BestFound && searched.BestFound is { } found && IsBetter(found.Values!, modelled.Values!)
                ? found with { Values = found.Values! with { Bound = Step.Max(found.Values.Bound, modelled.Values!.Bound) } }
                : modelled;
        }
        catch (WorkLimitException) when (searched.BestFound is not null)
        {
            return searched.BestFound;
        }
    }

    private static bool IsBetter(StageValues one, StageValues other) => one.LeastLargestStep != other.LeastLargestStep
        ? one.LeastLargestStep.Ln < other.LeastLargestStep.Ln
        : one.LeastMeanExcess <= other.LeastMeanExcess;
}
