using System.Collections.Immutable;

namespace Evenstep.Planning.Purchases;

/// <summary>A stretch of positions that a view reaches: a point, unless it is a zoom's.</summary>
public readonly record struct Reach(double From, double To);

/// <summary>Mismatches that matter, in position.</summary>
/// <param name="Enough">Half a step that is enough: what exceeds it is excess.</param>
/// <param name="Served">Up to this a position counts as served.</param>
public readonly record struct MismatchLimits(double Enough, double Served);

/// <summary>
/// How well a set of reaches serves an axis from 0 to U. The mismatch at a position is the distance to the nearest
/// reach; with no reach at all it counts as U everywhere. The telescopes of a kit are taken together as a kit: the
/// greatest of the mismatches, the averages of the means and shares.
/// </summary>
/// <param name="HasViews">False if there is nothing to look through.</param>
/// <param name="GreatestMismatch">In position.</param>
/// <param name="MeanMismatch">Averaged over the axis.</param>
/// <param name="MeanExcess">The average of what the mismatch exceeds the mismatch that is good enough by.</param>
/// <param name="ServedShare">The part of the axis, 0 to 1, that is served.</param>
public sealed record LadderFigures(
    bool HasViews, double GreatestMismatch, double MeanMismatch, double MeanExcess, double ServedShare)
{
    /// <summary>The part of the axis, 0 to 1, that comfortable views serve; 0 where only reaches are known.</summary>
    public double ComfortableShare { get; private init; }

    /// <summary>The step in whose middle the mismatch is greatest.</summary>
    public Step LargestStep => Step.OfMismatch(GreatestMismatch);

    /// <summary>Figures of one telescope.</summary>
    /// <param name="usable">The reaches of its usable views, in any order.</param>
    /// <param name="comfortable">Those of the comfortable ones among them.</param>
    /// <param name="length">U, the length of its axis.</param>
    /// <param name="limits">Mismatches that matter.</param>
    public static LadderFigures Of(IEnumerable<Reach> usable, IEnumerable<Reach> comfortable, double length, MismatchLimits limits)
    {
        var sorted = usable.ToArray();
        return Of(sorted, new double[sorted.Length], length, limits).With(comfortable.ToArray(), length, limits);
    }

    /// <summary>The same without the comfortable share, of reaches that are sorted here, with room for as many numbers.</summary>
    internal static LadderFigures Of(Span<Reach> reaches, Span<double> starts, double length, MismatchLimits limits)
    {
        if (reaches.IsEmpty)
        {
            return new LadderFigures(false, length, length, Math.Max(0, length - limits.Enough), 0);
        }

        for (var i = 0; i < reaches.Length; i++)
        {
            starts[i] = reaches[i].From;
        }

        starts.Sort(reaches);
        var sums = new Sums(limits);
        var reached = reaches[0].From;
        sums.AddEnd(reached);
        foreach (var reach in reaches)
        {
            sums.AddGap(reach.From - reached);
            sums.AddReach(reach.To - Math.Max(reach.From, reached));
            reached = Math.Max(reached, reach.To);
        }

        sums.AddEnd(length - reached);
        return sums.Over(length);
    }

    /// <summary>The same figures with the comfortable share.</summary>
    internal LadderFigures With(Span<Reach> comfortable, double length, MismatchLimits limits) =>
        this with { ComfortableShare = Stretches.LengthOf(Stretches.Near(comfortable, limits.Served, length)) / length };

    /// <summary>Figures of a kit from those of its telescopes.</summary>
    public static LadderFigures Of(ImmutableArray<LadderFigures> telescopes) => new(
        telescopes.Any(one => one.HasViews),
        telescopes.Max(one => one.GreatestMismatch),
        telescopes.Average(one => one.MeanMismatch),
        telescopes.Average(one => one.MeanExcess),
        telescopes.Average(one => one.ServedShare))
    {
        ComfortableShare = telescopes.Average(one => one.ComfortableShare),
    };

    /// <summary>Integrals over the axis. Across a gap the mismatch rises to half of it and falls again: two triangles.</summary>
    private struct Sums(MismatchLimits limits)
    {
        private double greatest;
        private double mismatch;
        private double excess;
        private double served;

        public void AddGap(double gap)
        {
            if (gap > 0)
            {
                AddEnd(gap / 2);
                AddEnd(gap / 2);
            }
        }

        /// <summary>A side of a gap, or an end of the axis, along which the mismatch rises from 0 to its length.</summary>
        public void AddEnd(double length)
        {
            greatest = Math.Max(greatest, length);
            mismatch += length * length / 2;
            var over = Math.Max(0, length - limits.Enough);
            excess += over * over / 2;
            served += Math.Min(length, limits.Served);
        }

        public void AddReach(double length) => served += Math.Max(0, length);

        public readonly LadderFigures Over(double length) =>
            new(true, greatest, mismatch / length, excess / length, served / length);
    }
}
