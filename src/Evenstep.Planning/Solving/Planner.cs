using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Solving;

/// <summary>Finds the best set of purchases and proves it.</summary>
public static class Planner
{
    /// <summary>Nodes of the search, after which the model takes over.</summary>
    private const long MostNodes = 1_000_000;

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
        var searched = SearchEngine.Solve(problem, MostNodes, budget.Part(ShareOfSearch * budget.UnitsLeft));
        return searched.Plan ?? ModelEngine.Solve(problem, budget, searched.HeadStart);
    }
}
