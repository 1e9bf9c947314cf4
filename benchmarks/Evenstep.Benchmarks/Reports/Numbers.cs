using System.Globalization;

namespace Evenstep.Benchmarks.Reports;

/// <summary>Numbers as the report shows them.</summary>
internal static class Numbers
{
    /// <summary>Three significant digits, so that microseconds and seconds read alike.</summary>
    public static string Show(double value)
    {
        var digits = value <= 0 ? 0 : Math.Clamp(2 - (int)Math.Floor(Math.Log10(value)), 0, 5);
        return value.ToString($"N{digits}", CultureInfo.InvariantCulture);
    }

    public static string Show(int value) => value.ToString("N0", CultureInfo.InvariantCulture);

    /// <summary>The value below which a share of the sorted values lies, by nearest rank: always one that was measured.</summary>
    public static T Percentile<T>(IReadOnlyList<T> sorted, double share) =>
        sorted[Math.Clamp((int)Math.Ceiling(share * sorted.Count) - 1, 0, sorted.Count - 1)];
}
