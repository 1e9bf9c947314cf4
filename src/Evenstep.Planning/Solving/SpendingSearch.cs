using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Solving;

/// <summary>Finds what every budget could buy at best.</summary>
public static class SpendingSearch
{
    /// <summary>The frontier of price and largest step, up to the problem's budget.</summary>
    /// <param name="problem">Its wish for a wide view is left aside.</param>
    /// <param name="budget">The work and memory that it may take. Where it ends the search, the frontier says up to which price
    /// it is proved.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static SpendingFrontier Solve(PurchaseProblem problem, WorkBudget budget)
    {
        budget.Look();
        try
        {
            var candidacy = Candidacy.Of(problem, budget);
            var candidates = candidacy.Candidates.Select(item => item.Id).ToHashSet();
            return problem.Demands.MustInclude.All(candidates.Contains)
                ? Told(FrontierEngine.Solve(problem, candidacy, budget), budget)
                : new SpendingFrontier(problem, [], problem.Limits.Budget);
        }
        catch (WorkEndedException)
        {
            return Told(new SpendingFrontier(problem, [], ProvedUpTo: null), budget);
        }
    }

    private static SpendingFrontier Told(SpendingFrontier frontier, WorkBudget budget) =>
        frontier.IsProved ? frontier : frontier with { Limit = budget.Reached ?? ReachedLimit.Work };
}
