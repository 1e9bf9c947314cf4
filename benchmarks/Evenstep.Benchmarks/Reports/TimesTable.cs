using Evenstep.Benchmarks.Problems;
using Evenstep.Benchmarks.Ways;

namespace Evenstep.Benchmarks.Reports;

/// <summary>How long each way took on each set.</summary>
internal sealed class TimesTable(ILookup<(ProblemSet Set, string Way), Measurement> measurements)
{
    private const string None = "–";

    private static readonly double[] Shares = [0.5, 0.9, 0.95, 0.99, 1];

    public string Of(IEnumerable<ProblemSet> sets)
    {
        var table = new Table(2, "set", "way", "asked", "proved", "not proved", "p50", "p90", "p95", "p99", "max", "times the planner", "kB");
        foreach (var set in sets)
        {
            AddRows(table, set);
        }

        return table.ToString();
    }

    private void AddRows(Table table, ProblemSet set)
    {
        List<string> notCarried = [];
        foreach (var way in AllWays.Listed)
        {
            Measurement[] asked = [.. measurements[(set, way.Name)]];
            Measurement[] carried = [.. asked.Where(run => run.IsCarried)];
            if (carried.Length > 0)
            {
                table.Add([set.Name, way.Name, .. Counts(carried), .. Percentiles(carried), TimesThePlanner(set, carried), Allocated(way, carried)]);
            }
            else if (asked.Length > 0)
            {
                notCarried.Add(way.Name);
            }
        }

        if (notCarried.Count > 0)
        {
            table.Add([set.Name, string.Join("; ", notCarried), None, None, "not carried", .. Shares.Select(_ => None), None, None]);
        }
    }

    private static string[] Counts(Measurement[] runs)
    {
        var unproved = runs.Where(run => !run.IsProved).CountBy(run => Words(run.Answer.Ending));
        return
        [
            Numbers.Show(runs.Length),
            Numbers.Show(runs.Count(run => run.IsProved)),
            string.Join(", ", unproved.Select(one => $"{Numbers.Show(one.Value)} {one.Key}").DefaultIfEmpty(None)),
        ];
    }

    private static string Words(Ending ending) => ending switch
    {
        Ending.Capped => "capped",
        Ending.WorkLimit => "at the work limit",
        Ending.TooLarge => "too large",
        _ => "failed",
    };

    /// <summary>A run that was given up counts as longer than any that was proved, and one that never began as longer still.</summary>
    private static IEnumerable<string> Percentiles(Measurement[] runs)
    {
        Measurement[] sorted = [.. runs.OrderBy(run => !run.IsProved).ThenBy(run => !run.WasGivenUp).ThenBy(run => run.Milliseconds)];
        return Shares.Select(share => Numbers.Percentile(sorted, share)).Select(run => AtLeast(run, run.Milliseconds));
    }

    /// <summary>The median over the problems that the planner proved, each against its time for the same problem.</summary>
    private string TimesThePlanner(ProblemSet set, Measurement[] runs)
    {
        var planner = measurements[(set, AllWays.Listed[0].Name)].Where(run => run.IsProved).ToDictionary(run => run.Number, run => run.Milliseconds);
        var ratios = runs.Where(run => planner.ContainsKey(run.Number))
            .Select(run => (Run: run, Ratio: run.IsProved || run.WasGivenUp ? run.Milliseconds / planner[run.Number] : double.PositiveInfinity))
            .OrderBy(one => one.Ratio)
            .ToList();
        if (ratios.Count == 0)
        {
            return None;
        }

        var (median, ratio) = Numbers.Percentile(ratios, 0.5);
        return AtLeast(median, ratio);
    }

    private static string AtLeast(Measurement run, double value) =>
        run.IsProved ? Numbers.Show(value) : run.WasGivenUp ? $"> {Numbers.Show(value)}" : None;

    private static string Allocated(Way way, Measurement[] runs)
    {
        long[] bytes = [.. runs.Select(run => run.Bytes).Order()];
        return way.IsOurs ? Numbers.Show(Numbers.Percentile(bytes, 0.5) / 1000.0) : None;
    }
}
