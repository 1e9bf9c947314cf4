using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>A stretch of an axis that no view of a set reaches.</summary>
/// <param name="From">A position.</param>
/// <param name="To">A position.</param>
/// <param name="IsLowEnd">No view bounds it below.</param>
/// <param name="IsHighEnd">No view bounds it above. Where neither does, there is no view at all.</param>
internal readonly record struct Gap(double From, double To, bool IsLowEnd, bool IsHighEnd)
{
    /// <summary>The greatest mismatch within it.</summary>
    public double Mismatch => IsLowEnd || IsHighEnd ? To - From : (To - From) / 2;
}

/// <summary>
/// What a set of views leaves open in one telescope: its greatest mismatch, its excess, and what further views would
/// gain. The definitions are those of <see cref="LadderFigures"/>.
/// </summary>
internal sealed class Gaps
{
    private readonly double length;
    private readonly double enough;
    private readonly List<Gap> costly = [];

    private Gaps(double length, double enough) => (this.length, this.enough) = (length, enough);

    public List<Gap> All { get; } = [];

    public double Mismatch { get; private set; }

    /// <summary>The integral of the excess over the axis.</summary>
    public double Excess { get; private set; }

    /// <param name="reaches">Of the views, within the axis; sorted by their beginnings.</param>
    /// <param name="length">U, the length of the axis.</param>
    /// <param name="enough">The mismatch that is good enough.</param>
    public static Gaps Of(ReadOnlySpan<RatedReach> reaches, double length, double enough)
    {
        var gaps = new Gaps(length, enough);
        var (reached, open) = (0.0, true);
        foreach (var reach in reaches)
        {
            gaps.Add(new Gap(reached, reach.From, open, false));
            (reached, open) = (Math.Max(reached, reach.To), false);
        }

        gaps.Add(new Gap(reached, length, open, true));
        return gaps;
    }

    /// <summary>How much less excess there is with these views too.</summary>
    /// <param name="reaches">Sorted by their beginnings.</param>
    public double Gain(ReadOnlySpan<RatedReach> reaches)
    {
        if (reaches.IsEmpty)
        {
            return 0;
        }

        var gain = 0.0;
        foreach (var gap in costly)
        {
            if (reaches[0].From <= gap.To)
            {
                gain += ExcessOf(gap) - ExcessWithin(gap, reaches);
            }
        }

        return Math.Max(0, gain);
    }

    private void Add(in Gap gap)
    {
        if (gap.To <= gap.From)
        {
            return;
        }

        All.Add(gap);
        Mismatch = Math.Max(Mismatch, gap.Mismatch);
        if (ExcessOf(gap) is > 0 and var excess)
        {
            Excess += excess;
            costly.Add(gap);
        }
    }

    private double ExcessOf(in Gap gap)
    {
        var over = Math.Max(0, gap.Mismatch - enough);
        return (gap.IsLowEnd, gap.IsHighEnd) switch
        {
            (true, true) => length * over,
            (false, false) => over * over,
            _ => over * over / 2,
        };
    }

    private double ExcessWithin(in Gap gap, ReadOnlySpan<RatedReach> reaches)
    {
        var (sum, reached, open) = (0.0, gap.From, gap.IsLowEnd);
        foreach (ref readonly var reach in reaches)
        {
            if (reach.From > gap.To)
            {
                break;
            }

            if (reach.To >= gap.From)
            {
                sum += reach.From > reached ? ExcessOf(new Gap(reached, reach.From, open, false)) : 0;
                (reached, open) = (Math.Max(reached, reach.To), false);
            }
        }

        return sum + (gap.To > reached ? ExcessOf(new Gap(reached, gap.To, open, gap.IsHighEnd)) : 0);
    }
}
