using System.Collections.Immutable;
using System.Diagnostics;
using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;

namespace Evenstep.Service.Recommendations;

/// <summary>A plan that the referee found no fault in, and how long it took to find.</summary>
internal sealed record Solved(Plan Plan, TimeSpan Took);

/// <summary>Plans, and lets the referee check every plan: rather no answer than a wrong one.</summary>
internal sealed partial class RefereedPlanner(SolveGate gate, WorkLimit limit, ILogger<RefereedPlanner> logger)
{
    /// <summary>The plan for a problem; the body it was read from goes into the log if the referee objects.</summary>
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found.</exception>
    /// <exception cref="RefereeException">The plan is faulty: a mistake of ours, logged in full.</exception>
    public async Task<Solved> SolveAsync(PurchaseProblem problem, JsonElement body, CancellationToken gone)
    {
        var solved = await gate.RunAsync(() => Solve(problem, gone), gone);
        var faults = Referee.FaultsOf(problem, solved.Plan);
        return faults.IsEmpty ? solved : throw Objection(solved.Plan, faults, body);
    }

    private Solved Solve(PurchaseProblem problem, CancellationToken gone)
    {
        var started = Stopwatch.GetTimestamp();
        var plan = Planner.Solve(problem, limit.Work, gone);
        return new Solved(plan, Stopwatch.GetElapsedTime(started));
    }

    private RefereeException Objection(Plan plan, ImmutableArray<string> faults, JsonElement body)
    {
        LogObjection(string.Join(' ', faults), plan.Outcome, string.Join(", ", plan.Purchases), plan.Values, body.GetRawText());
        return new RefereeException($"The referee found fault with a plan: {string.Join(' ', faults)}");
    }

    [LoggerMessage(
        LogLevel.Critical,
        "The referee found fault with a plan. Faults: {Faults} Outcome: {Outcome}. Purchases: {Purchases}. Values: {Values}. Request: {Body}")]
    private partial void LogObjection(string faults, Outcome outcome, string purchases, StageValues? values, string body);
}

/// <summary>The deterministic work that one solve may take, about a second each on a usual core.</summary>
internal sealed record WorkLimit(double Work)
{
    private const string Key = "Evenstep:WorkLimit";
    private const double Default = 10;

    public static WorkLimit From(IConfiguration configuration)
    {
        var work = configuration.GetValue(Key, Default);
        return work > 0 && double.IsFinite(work)
            ? new WorkLimit(work)
            : throw new InvalidOperationException($"{Key} must be a number above 0.");
    }
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
