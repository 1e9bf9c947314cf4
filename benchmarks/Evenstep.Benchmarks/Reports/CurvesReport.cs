using System.Collections.Immutable;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The part of the report on spending curves.</summary>
internal static class CurvesReport
{
    public static string Of(ImmutableArray<CurveResults> results, Options options)
    {
        var table = new Table(1, "problems", "points, p50", "plan p50 ms", "curve p50 ms", "curve max ms", "curve / plan, p50", "curve / plan, max", "proved");
        foreach (var (name, runs) in results)
        {
            table.Add(
                name,
                Numbers.Show(Middle(runs, run => run.Points)),
                Numbers.Show(Middle(runs, run => run.PlanMs)),
                Numbers.Show(Middle(runs, run => run.CurveMs)),
                Numbers.Show(runs.Max(run => run.CurveMs)),
                Numbers.Show(Middle(runs, run => run.Ratio)),
                Numbers.Show(runs.Max(run => run.Ratio)),
                $"{runs.Count(run => run.Proved)} of {runs.Length}");
        }

        return $"""
            ## Spending curves

            The whole frontier of price and largest step beside one plan of the same problem; each time is the median of
            five.{(options.Quick ? " A quick look, on few problems." : "")}

            {table}
            """;
    }

    private static T Middle<T>(ImmutableArray<CurveRun> runs, Func<CurveRun, T> what) => Numbers.Percentile([.. runs.Select(what).Order()], 0.5);
}
