using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Solving;

/// <summary>Finds what every budget could buy at best.</summary>
public static class SpendingSearch
{
    /// <summary>Nodes of the search that make a unit of work.</summary>
    private const double NodesOfWork = 500_000;

    /// <summary>The frontier of price and largest step, up to the problem's budget.</summary>
    /// <param name="problem">Its enough step and its wish for a wide view are left aside.</param>
    /// <param name="budget">The work and memory that it may take. Where it ends the search, the frontier says up to which price
    /// it is proved.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static SpendingFrontier Solve(PurchaseProblem problem, WorkBudget budget)
    {
        budget.Look();
        var candidacy = Candidacy.Of(problem);
        return problem.Demands.MustInclude.All(id => candidacy.Candidates.Any(item => item.Id == id))
            ? FrontierEngine.Solve(problem, candidacy, new Effort((long)(budget.UnitsLeft * NodesOfWork), budget))
            : new SpendingFrontier(problem, [], problem.Limits.Budget);
    }
}
