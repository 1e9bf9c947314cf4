using System.Collections.Immutable;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The part of the report on plans confirmed by the second prover.</summary>
internal static class CertificatesReport
{
    public static string Of(ImmutableArray<CertificateResults> results, Options options)
    {
        var table = new Table(
            1, "items", "agreed", "disagreed", "undecided", "p50 ms", "p90 ms", "p99 ms", "max ms", "false claims refuted", "believed", "undecided", "peak MB");
        foreach (var result in results)
        {
            table.Add(
                result.Name,
                Numbers.Show(result.Agreed),
                Numbers.Show(result.Disagreed),
                Numbers.Show(result.Undecided),
                Numbers.Show(Numbers.Percentile(result.SortedMs, 0.5)),
                Numbers.Show(Numbers.Percentile(result.SortedMs, 0.9)),
                Numbers.Show(Numbers.Percentile(result.SortedMs, 0.99)),
                Numbers.Show(result.SortedMs[^1]),
                Numbers.Show(result.Refuted),
                Numbers.Show(result.Believed),
                Numbers.Show(result.Doubted),
                Numbers.Show(result.PeakMb));
        }

        return $"""
            ## Certificates

            The search plans problems of every variant in turn, and the constraint model looks for anything better than each plan, within the usual budget.
            Undecided: a limit came first. Then the plan is claimed to be worse than it is: its step or excess by 1e-4, 1e-6 and 1e-8, its price by a cent (a
            twin of an item is added), or that nothing is allowed. Many Barlows: 12 % of the items, of three factors. The peak is of the whole process so far,
            the search's work included.{(options.Quick ? " A quick look, on few problems." : "")}

            {table}
            """;
    }
}
