using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Scheduling;

namespace Evenstep.Service.Answering.Solving;

/// <summary>A plan that the referee found no fault in.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Took">How long it took to find.</param>
/// <param name="Certified">True if the second engine confirmed it; null if it was not asked, or could not tell.</param>
internal sealed record Solved(Plan Plan, TimeSpan Took, bool? Certified = null)
{
    /// <summary>The best plan without each purchase; empty if they were not asked for.</summary>
    public ImmutableArray<Alternative> Alternatives { get; init; } = [];
}

/// <summary>Plans, and lets the referee check every plan: rather no answer than a wrong one.</summary>
internal sealed partial class RefereedPlanner(PlanSolver solve, SolveGate gate, WorkLimits limits, Certificates certificates, ILogger<RefereedPlanner> logger)
{
    /// <summary>The plan for a problem; certified, if asked for.</summary>
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found.</exception>
    /// <exception cref="RefereeException">The plan is faulty: a mistake of ours, logged in full.</exception>
    /// <exception cref="DisagreementException">The second engine, if asked, disagrees: a mistake of ours too.</exception>
    public Task<Solved> SolveAsync(PlanningCase asked, bool certify, CancellationToken cancellationToken) =>
        gate.RunAsync(slot => Solve(asked, certify, slot.Budget(limits)), cancellationToken);

    /// <summary>The same, with the best plan without each purchase; all as one solve.</summary>
    /// <exception cref="WorkLimitException">As above; an alternative that was not found in time is only left out.</exception>
    /// <exception cref="RefereeException">A plan is faulty, the alternatives included.</exception>
    /// <exception cref="DisagreementException">As above.</exception>
    public Task<Solved> SolveWithAlternativesAsync(PlanningCase asked, bool certify, CancellationToken cancellationToken) => gate.RunAsync(
        slot =>
        {
            var budget = slot.Budget(limits);
            var solved = Solve(asked, certify, budget);
            return solved with { Alternatives = AlternativesTo(asked, solved.Plan, budget) };
        },
        cancellationToken);

    private Solved Solve(PlanningCase asked, bool certify, WorkBudget budget)
    {
        var started = Stopwatch.GetTimestamp();
        var plan = solve(asked.Problem, budget);
        var took = Stopwatch.GetElapsedTime(started);
        Check(asked, asked.Problem, plan);
        return new Solved(plan, took, certify ? certificates.Certify(asked, plan, budget) : null);
    }

    private ImmutableArray<Alternative> AlternativesTo(PlanningCase asked, Plan plan, WorkBudget budget)
    {
        var alternatives = Alternatives.Of(asked.Problem, plan, budget);
        foreach (var alternative in alternatives)
        {
            if (alternative.Plan is { } found)
            {
                Check(asked, alternative.Problem, found);
            }
        }

        return alternatives;
    }

    private void Check(PlanningCase asked, PurchaseProblem problem, Plan plan)
    {
        var faults = Referee.FaultsOf(problem, plan);
        if (!faults.IsEmpty)
        {
            throw Objection(asked, plan, faults);
        }
    }

    private RefereeException Objection(PlanningCase asked, Plan plan, ImmutableArray<string> faults)
    {
        LogObjection(string.Join(' ', faults), plan.Outcome, string.Join(", ", plan.Purchases), plan.Values, Encoding.UTF8.GetString(asked.Body.Span));
        return new RefereeException($"The referee found fault with a plan: {string.Join(' ', faults)}");
    }

    [LoggerMessage(
        LogLevel.Critical,
        "The referee found fault with a plan. Faults: {Faults} Outcome: {Outcome}. Purchases: {Purchases}. Values: {Values}. Request: {Body}")]
    private partial void LogObjection(string faults, Outcome outcome, string purchases, StageValues? values, string body);
}

/// <summary>The referee found fault with a plan of our own.</summary>
internal sealed class RefereeException : Exception
{
    public RefereeException()
    {
    }

    public RefereeException(string message)
        : base(message)
    {
    }

    public RefereeException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
