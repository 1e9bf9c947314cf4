using Evenstep.Benchmarks.Problems;
using Evenstep.Benchmarks.Ways;

namespace Evenstep.Benchmarks.Reports;

/// <summary>How long each way took on each set.</summary>
internal sealed class TimesTable(ILookup<(ProblemSet Set, string Way), Measurement> measurements)
{
    private static readonly double[] Shares = [0.5, 0.9, 0.95, 0.99, 1];

    public string Of(IEnumerable<ProblemSet> sets)
    {
        var table = new Table(2, "set", "way", "tried", "proved", "not proved", "p50", "p90", "p95", "p99", "max", "times the planner", "kB");
        foreach (var set in sets)
        {
            foreach (var way in AllWays.Listed)
            {
                AddRow(table, set, way);
            }
        }

        return table.ToString();
    }

    private void AddRow(Table table, ProblemSet set, Way way)
    {
        Measurement[] asked = [.. measurements[(set, way.Name)]];
        Measurement[] tried = [.. asked.Where(run => run.WasTried)];
        if (tried.Length > 0)
        {
            table.Add([set.Name, way.Name, .. Counts(tried), .. Percentiles(tried), TimesThePlanner(set, tried), Allocated(way, tried)]);
        }
        else if (asked.Length > 0)
        {
            table.Add([set.Name, way.Name, Reason(asked[0]), "", "", .. Shares.Select(_ => ""), "", ""]);
        }
    }

    private static string[] Counts(Measurement[] tried) =>
        [Numbers.Show(tried.Length), Numbers.Show(tried.Count(run => run.IsProved)), Numbers.Show(tried.Count(run => !run.IsProved))];

    /// <summary>A run that was not proved counts as longer than any that was.</summary>
    private static IEnumerable<string> Percentiles(Measurement[] tried)
    {
        Measurement[] sorted = [.. tried.OrderBy(run => !run.IsProved).ThenBy(run => run.Milliseconds)];
        return Shares.Select(share => Numbers.Percentile(sorted, share))
            .Select(run => $"{(run.IsProved ? "" : "> ")}{Numbers.Show(run.Milliseconds)}");
    }

    /// <summary>The median over the problems, each against the planner's time for the same problem.</summary>
    private string TimesThePlanner(ProblemSet set, Measurement[] tried)
    {
        var planner = measurements[(set, AllWays.Listed[0].Name)].ToDictionary(run => run.Number, run => run.Milliseconds);
        var ratios = tried.Select(run => (run.IsProved, Ratio: run.Milliseconds / planner[run.Number])).OrderBy(one => one.Ratio).ToList();
        var (isProved, ratio) = Numbers.Percentile(ratios, 0.5);
        return $"{(isProved ? "" : "> ")}{Numbers.Show(ratio)}";
    }

    private static string Allocated(Way way, Measurement[] tried)
    {
        long[] bytes = [.. tried.Select(run => run.Bytes).Order()];
        return way.IsOurs ? Numbers.Show(Numbers.Percentile(bytes, 0.5) / 1000.0) : "";
    }

    private static string Reason(Measurement run) => run.Answer.Ending switch
    {
        Ending.TooLarge => "too large",
        Ending.NotCarried => "not carried",
        _ => "failed",
    };
}
