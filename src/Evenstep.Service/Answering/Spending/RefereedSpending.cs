using System.Diagnostics;
using System.Text;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;

namespace Evenstep.Service.Answering.Spending;

/// <summary>A frontier that the referee found no fault in.</summary>
/// <param name="Frontier">The frontier.</param>
/// <param name="Took">How long it took to find.</param>
internal sealed record SolvedCurve(SpendingFrontier Frontier, TimeSpan Took);

/// <summary>Finds frontiers, and lets the referee check every one: rather no answer than a wrong one.</summary>
internal sealed partial class RefereedSpending(SpendingSolver solve, SolveGate gate, WorkLimits limits, ILogger<RefereedSpending> logger)
{
    /// <summary>What every budget up to the problem's buys at best.</summary>
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found.</exception>
    /// <exception cref="RefereeException">The frontier is faulty: a mistake of ours, logged in full.</exception>
    public Task<SolvedCurve> SolveAsync(PlanningCase asked, CancellationToken cancellationToken) =>
        gate.RunAsync(slot => Solve(asked, slot.Budget(limits)), cancellationToken);

    private SolvedCurve Solve(PlanningCase asked, WorkBudget budget)
    {
        var started = Stopwatch.GetTimestamp();
        var frontier = solve(asked.Problem, budget);
        var took = Stopwatch.GetElapsedTime(started);
        if (frontier is { Points.IsEmpty: true, IsProved: false })
        {
            throw new WorkLimitException("The work limit ended the search for any allowed set.");
        }

        Check(asked, frontier);
        return new SolvedCurve(frontier, took);
    }

    private void Check(PlanningCase asked, SpendingFrontier frontier)
    {
        var faults = string.Join(' ', SpendingReferee.FaultsOf(frontier));
        if (faults.Length > 0)
        {
            LogObjection(faults, Encoding.UTF8.GetString(asked.Body.Span));
            throw new RefereeException($"The referee found fault with a spending curve: {faults}");
        }
    }

    [LoggerMessage(LogLevel.Critical, "The referee found fault with a spending curve. Faults: {Faults} Request: {Body}")]
    private partial void LogObjection(string faults, string body);
}
