using System.Collections.Immutable;
using System.Diagnostics;
using Evenstep.Benchmarks.Problems;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Solving;

namespace Evenstep.Benchmarks;

/// <summary>A plan and a spending curve of the same problem.</summary>
/// <param name="PlanMs">The plan's time.</param>
/// <param name="CurveMs">The curve's time.</param>
/// <param name="Points">On the frontier.</param>
/// <param name="Proved">Whether the frontier is proved to its end.</param>
internal sealed record CurveRun(double PlanMs, double CurveMs, int Points, bool Proved)
{
    public double Ratio => CurveMs / PlanMs;
}

/// <summary>The runs on problems of one kind.</summary>
internal sealed record CurveResults(string Name, ImmutableArray<CurveRun> Runs);

/// <summary>Spending curves beside plans, problem by problem.</summary>
internal static class CurveRuns
{
    private const double WorkLimit = 10;
    private const int Repetitions = 5;
    private const int WarmUps = 5;

    public static ImmutableArray<CurveResults> Run(Options options)
    {
        Run(100, Variant.Usual, WarmUps);
        var count = options.Quick ? 10 : 100;
        return
        [
            Results(100, Variant.Usual, count),
            Results(300, Variant.Usual, count),
            .. Variant.Others.Select(variant => Results(300, variant, count)),
            Results(1000, Variant.Usual, count),
            Results(3000, Variant.Usual, count / 2),
        ];
    }

    private static CurveResults Results(int items, Variant variant, int count)
    {
        Progress.Tell($"curves, {items} items, {variant.Name}");
        return new CurveResults($"{items} items, {variant.Name}", Run(items, variant, count));
    }

    private static ImmutableArray<CurveRun> Run(int items, Variant variant, int count)
    {
        List<CurveRun> runs = [];
        for (var number = 0; number < count; number++)
        {
            var problem = ProblemDraw.Draw(items, variant, number);
            var frontier = SpendingSearch.Solve(problem, new WorkBudget(WorkLimit));
            var plan = Median(() => Planner.Solve(problem, new WorkBudget(WorkLimit)));
            var curve = Median(() => SpendingSearch.Solve(problem, new WorkBudget(WorkLimit)));
            runs.Add(new CurveRun(plan, curve, frontier.Points.Length, frontier.IsProved));
        }

        return [.. runs];
    }

    private static double Median(Action solve) =>
        Enumerable.Range(0, Repetitions).Select(_ => Time(solve)).Order().ElementAt(Repetitions / 2);

    private static double Time(Action solve)
    {
        var started = Stopwatch.GetTimestamp();
        solve();
        return Stopwatch.GetElapsedTime(started).TotalMilliseconds;
    }
}
