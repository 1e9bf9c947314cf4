namespace Evenstep.Planning.Tests.Oracle;

/// <summary>
/// The figures of one telescope from the intervals its usable views cover, by integrating the mismatch.
/// The mismatch is 0 on the intervals and elsewhere made of ramps of slope 1: one over each gap at an end
/// of the range, two over half a gap each between neighbours.
/// </summary>
internal static class OracleLadder
{
    private const double LeastServingStep = 1.2;

    /// <summary>How far from a view the powers are served: d.</summary>
    public static double Serving(double enoughStep) => Math.Log(Math.Max(enoughStep, LeastServingStep)) / 2;

    public static OracleFigures Figures(IReadOnlyList<OracleView> views, double length, double enoughStep) => Figures(
        Intervals(views), Intervals(views.Where(view => view.Drawbacks.Count == 0)), length, enoughStep);

    public static List<(double Start, double End)> Intervals(IEnumerable<OracleView> views) =>
        [.. views.Select(view => (view.Start, view.End)).OrderBy(interval => interval.Start)];

    /// <summary>The intervals come in order of their starts, those of the comfortable views among them.</summary>
    public static OracleFigures Figures(
        IReadOnlyList<(double Start, double End)> intervals,
        IReadOnlyList<(double Start, double End)> comfortable,
        double length,
        double enoughStep)
    {
        double enough = Math.Log(enoughStep) / 2;
        if (intervals.Count == 0)
        {
            return new OracleFigures(false, 2 * length, length, Math.Max(0, length - enough), 0, 0);
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
            Within(Serving(enoughStep), intervals, length) / length,
            Within(Serving(enoughStep), comfortable, length) / length);
    }

    public static OracleFigures Combine(IReadOnlyList<OracleFigures> telescopes) => new(
        telescopes.Any(figures => figures.HasUsableView),
        telescopes.Max(figures => figures.LnLargestStep),
        telescopes.Average(figures => figures.MeanMismatch),
        telescopes.Average(figures => figures.MeanExcess),
        telescopes.Average(figures => figures.ServedShare),
        telescopes.Average(figures => figures.ComfortableShare));

    /// <summary>How much of the range lies within a reach of some interval; they come in order of their starts.</summary>
    public static double Within(double reach, IReadOnlyList<(double Start, double End)> intervals, double length)
    {
        double covered = 0;
        double covers = 0;
        foreach ((double start, double end) in intervals)
        {
            double from = Math.Max(covers, start - reach);
            double to = Math.Min(length, end + reach);
            if (to > from)
            {
                covered += to - from;
                covers = to;
            }
        }

        return covered;
    }

    /// <summary>Integrals over ramps along which the mismatch climbs from 0 to its height.</summary>
    private sealed class RampSum(double enough)
    {
        public double Highest { get; private set; }

        public double Mismatch { get; private set; }

        public double Excess { get; private set; }

        public void Add(double height)
        {
            double beyond = Math.Max(0, height - enough);
            Highest = Math.Max(Highest, height);
            Mismatch += height * height / 2;
            Excess += beyond * beyond / 2;
        }
    }
}
