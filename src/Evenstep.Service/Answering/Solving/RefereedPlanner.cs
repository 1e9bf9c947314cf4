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

    /// <summary>How far some inputs may be otherwise; null if that was not asked for, or nothing is allowed.</summary>
    public HoldsWhile? HoldsWhile { get; init; }
}

/// <summary>What is wanted beside a plan.</summary>
/// <param name="Certify">Whether the second engine is to confirm it.</param>
/// <param name="IfUnavailable">Whether the best plan without each purchase is wanted.</param>
/// <param name="SeeingArcsec">The seeing, in arcseconds, if it is wanted how far that and other inputs may be otherwise; else null.</param>
internal sealed record FurtherSolves(bool Certify, bool IfUnavailable, double? SeeingArcsec);

/// <summary>Several ways of weighing the same wishes, each with a plan that the referee found no fault in.</summary>
/// <param name="Found">The choices.</param>
/// <param name="Took">How long all of them took to find.</param>
internal sealed record SolvedChoices(Choices Found, TimeSpan Took);

/// <summary>Plans, and lets the referee check every plan: rather no answer than a wrong one.</summary>
internal sealed partial class RefereedPlanner(PlanSolver solve, SolveGate gate, WorkLimits limits, Certificates certificates, ILogger<RefereedPlanner> logger)
{
    /// <summary>The plan for a problem, with what else is wanted; all as one solve.</summary>
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found; what else is wanted is only left
    /// out where it was not found in time.</exception>
    /// <exception cref="RefereeException">A plan is faulty: a mistake of ours, logged in full.</exception>
    /// <exception cref="DisagreementException">The second engine, if asked, disagrees: a mistake of ours too.</exception>
    public Task<Solved> SolveAsync(PlanningCase asked, FurtherSolves wanted, CancellationToken cancellationToken) =>
        gate.RunAsync(slot => Solve(asked, wanted, slot.Budget(limits)), cancellationToken);

    /// <summary>Several ways of weighing the same wishes; all as one solve.</summary>
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found for the way that the others are
    /// compared with.</exception>
    /// <exception cref="RefereeException">A plan is faulty: a mistake of ours, logged in full.</exception>
    public Task<SolvedChoices> ChooseAsync(PlanningCase asked, CancellationToken cancellationToken) => gate.RunAsync(
        slot =>
        {
            var started = Stopwatch.GetTimestamp();
            var choices = Choices.Of(asked.Problem, Refereed(asked), slot.Budget(limits));
            return new SolvedChoices(choices, Stopwatch.GetElapsedTime(started));
        },
        cancellationToken);

    private Solved Solve(PlanningCase asked, FurtherSolves wanted, WorkBudget budget)
    {
        var solved = Solve(asked, wanted.Certify, budget);
        if (wanted.IfUnavailable)
        {
            // Half of what is left is kept for what else is wanted.
            var share = wanted.SeeingArcsec is null ? budget : budget.Part(budget.UnitsLeft / 2);
            solved = solved with { Alternatives = AlternativesTo(asked, solved.Plan, share) };
        }

        return wanted.SeeingArcsec is { } seeing
            ? solved with { HoldsWhile = HoldsWhile.Of(asked.Problem, solved.Plan, seeing, Refereed(asked), budget) }
            : solved;
    }

    private SolveWithin Refereed(PlanningCase asked) => (problem, budget) =>
    {
        var plan = solve(problem, budget);
        Check(asked, problem, plan);
        return plan;
    };

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
