namespace Evenstep.Planning.Tests.Oracle;

/// <summary>
/// The figures of one telescope from the intervals its usable views cover, by integrating the mismatch.
/// The mismatch is 0 on the intervals and elsewhere made of ramps of slope 1: one over each gap at an end
/// of the range, two over half a gap each between neighbours.
/// </summary>
internal static class OracleLadder
{
    /// <summary>The intervals come in order of their starts.</summary>
    public static OracleFigures Figures(IReadOnlyList<(double Start, double End)> intervals, double length, double enough)
    {
        if (intervals.Count == 0)
        {
            return new OracleFigures(false, 2 * length, length, Math.Max(0, length - enough), 0);
        }

        RampSum ramps = new(enough);
        ramps.Add(intervals[0].Start);
        double reached = intervals[0].End;
        for (int i = 1; i < intervals.Count; i++)
        {
            double gap = intervals[i].Start - reached;
            if (gap > 0)
            {
                ramps.Add(gap / 2);
                ramps.Add(gap / 2);
            }

            reached = Math.Max(reached, intervals[i].End);
        }

        ramps.Add(length - reached);
        return new OracleFigures(
            true,
            2 * ramps.Highest,
            ramps.Mismatch / length,
            ramps.Excess / length,
            1 - (ramps.NotServed / length));
    }

    public static OracleFigures Combine(IReadOnlyList<OracleFigures> telescopes) => new(
        telescopes.Any(figures => figures.HasUsableView),
        telescopes.Max(figures => figures.LnLargestStep),
        telescopes.Average(figures => figures.MeanMismatch),
        telescopes.Average(figures => figures.MeanExcess),
        telescopes.Average(figures => figures.ServedShare));

    /// <summary>Integrals over ramps along which the mismatch climbs from 0 to its height.</summary>
    private sealed class RampSum(double enough)
    {
        public double Highest { get; private set; }

        public double Mismatch { get; private set; }

        public double Excess { get; private set; }

        public double NotServed { get; private set; }

        public void Add(double height)
        {
            double beyond = Math.Max(0, height - enough);
            Highest = Math.Max(Highest, height);
            Mismatch += height * height / 2;
            Excess += beyond * beyond / 2;
            NotServed += beyond;
        }
    }
}
