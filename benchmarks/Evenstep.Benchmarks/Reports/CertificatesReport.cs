using System.Collections.Immutable;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The part of the report on plans confirmed by the second prover.</summary>
internal static class CertificatesReport
{
    public static string Of(ImmutableArray<CertificateResults> results, Options options)
    {
        var table = new Table(1, "items", "agreed", "disagreed", "undecided", "p50 ms", "p90 ms", "p99 ms", "max ms");
        foreach (var result in results)
        {
            table.Add(
                Numbers.Show(result.Items),
                Numbers.Show(result.Agreed),
                Numbers.Show(result.Disagreed),
                Numbers.Show(result.Undecided),
                Numbers.Show(Numbers.Percentile(result.SortedMs, 0.5)),
                Numbers.Show(Numbers.Percentile(result.SortedMs, 0.9)),
                Numbers.Show(Numbers.Percentile(result.SortedMs, 0.99)),
                Numbers.Show(result.SortedMs[^1]));
        }

        return $"""
            ## Certificates

            The search plans problems of every variant in turn, and the constraint model looks for anything better than each plan. Undecided: its work limit came first.{(options.Quick ? " A quick look, on few problems." : "")}

            {table}
            """;
    }
}
