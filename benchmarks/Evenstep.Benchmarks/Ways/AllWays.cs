using Evenstep.Planning.Budgets;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Solving.Model;

namespace Evenstep.Benchmarks.Ways;

/// <summary>What is compared. All ratios are against the first.</summary>
internal static class AllWays
{
    /// <summary>Our engines. An engine that comes later joins here.</summary>
    private static readonly Way[] Ours =
    [
        new EngineWay("shipped planner", (problem, limit, cancellation) => Planner.Solve(problem, new WorkBudget(limit, cancellation))),
        new EngineWay("constraint model", (problem, limit, cancellation) => ModelEngine.Solve(problem, new WorkBudget(limit, cancellation))),
    ];

    private static readonly Way[] Others =
    [
        new PlainWay("plain CP-SAT", () => new CpSatProgram()),
        new PlainWay("MIP, SCIP", MipProgram.Scip),
        new PlainWay("MIP, HiGHS", MipProgram.Highs),
        new ExhaustiveWay(),
    ];

    public static readonly Way[] Listed = [.. Ours, .. Others];
}
