using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Solving;

/// <summary>Finds the best set of purchases and proves it.</summary>
public static class Planner
{
    /// <summary>Nodes of the search, after which the model takes over.</summary>
    private const long MostNodes = 1_000_000;

    /// <summary>The plan for a problem: the same for the same problem, whatever the order of its items.</summary>
    /// <param name="problem">What to plan.</param>
    /// <param name="workLimit">Deterministic work, about a second each on a usual core; the same work on any machine.</param>
    /// <param name="cancellation">Ends the work at once.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found, and before it was proved
    /// that there is none.</exception>
    public static Plan Solve(PurchaseProblem problem, double workLimit, CancellationToken cancellation) =>
        Solve(problem, workLimit, sharers: 1, cancellation);

    /// <summary>The same with an equal part of the work, where several plans share it.</summary>
    public static Plan Solve(PurchaseProblem problem, double workLimit, int sharers, CancellationToken cancellation)
    {
        var searched = SearchEngine.Solve(problem, MostNodes / sharers, cancellation);
        return searched.Plan ?? ModelEngine.Solve(problem, workLimit / sharers, cancellation, searched.HeadStart);
    }
}
