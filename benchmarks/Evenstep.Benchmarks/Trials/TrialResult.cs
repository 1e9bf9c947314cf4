using System.Collections.Immutable;
using System.Globalization;
using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Trials;

/// <summary>What came of one trial.</summary>
/// <param name="Name">What was tried.</param>
/// <param name="Seconds">How long it took, or until it was given up.</param>
/// <param name="BeforeMegabytes">Resident memory (1e6 bytes) before it.</param>
/// <param name="PeakMegabytes">The most resident memory during it.</param>
/// <param name="Outcome">In words.</param>
internal sealed record TrialResult(string Name, double Seconds, double BeforeMegabytes, double PeakMegabytes, string Outcome)
{
    public static string Report(string heading, string introduction, ImmutableArray<TrialResult> results)
    {
        var table = new Table(1, "tried", "seconds", "MB before", "MB at most", "outcome");
        foreach (var result in results)
        {
            table.Add(
                result.Name,
                result.Seconds.ToString("F1", CultureInfo.InvariantCulture),
                result.BeforeMegabytes.ToString("N0", CultureInfo.InvariantCulture),
                result.PeakMegabytes.ToString("N0", CultureInfo.InvariantCulture),
                result.Outcome);
        }

        return $"## {heading}\n\n{introduction}\n\n{table}";
    }
}
