using System.Collections.Immutable;

namespace Evenstep.Planning.Optics;

/// <summary>
/// Lays powers out on an axis from 0 (the lowest power of the range) to <see cref="Length"/> (the highest): the position
/// of a power is the integral of the zones' weight over ln(power), continuous, increasing and piecewise linear in it.
/// </summary>
public sealed class PowerAxis
{
    private readonly PowerRange range;
    private readonly double[] lnPowers;
    private readonly double[] positions;

    public PowerAxis(PowerRange range, double apertureMm, ImmutableArray<Interest> observes)
    {
        if (!range.IsWideEnough)
        {
            throw new ArgumentException($"The powers from {range.Lowest} to {range.Highest} span less than {PowerRange.LeastSpan} times.", nameof(range));
        }

        this.range = range;
        List<double> lns = [Math.Log(range.Lowest)];
        List<double> us = [0];
        foreach (var zone in Zone.All)
        {
            var end = zone.NarrowestExitPupilMm > 0 ? Math.Min(apertureMm / zone.NarrowestExitPupilMm, range.Highest) : range.Highest;
            var lnEnd = Math.Log(end);
            if (lnEnd > lns[^1])
            {
                us.Add(us[^1] + (zone.WeightFor(observes) * (lnEnd - lns[^1])));
                lns.Add(lnEnd);
            }
        }

        lnPowers = [.. lns];
        positions = [.. us];
        (LnLowest, LnHighest) = (lnPowers[0], lnPowers[^1]);
    }

    /// <summary>The position of the highest power.</summary>
    public double Length => positions[^1];

    /// <summary>The logarithm of the lowest power.</summary>
    internal double LnLowest { get; }

    /// <summary>The logarithm of the highest power.</summary>
    internal double LnHighest { get; }

    /// <summary>The position of a power, cut to the range.</summary>
    public double PositionOf(double power) => PositionOfLn(Math.Log(power));

    /// <summary>The position of the power of this logarithm, cut to the range.</summary>
    internal double PositionOfLn(double lnPower) => Interpolate(lnPowers, positions, Math.Clamp(lnPower, LnLowest, LnHighest));

    /// <summary>The power at a position, cut to the axis.</summary>
    public double PowerAt(double position) => range.Cut(Math.Exp(Interpolate(positions, lnPowers, Math.Clamp(position, 0, Length))));

    private static double Interpolate(double[] from, double[] to, double x)
    {
        var i = 1;
        while (i < from.Length - 1 && x > from[i])
        {
            i++;
        }

        return Math.Clamp(to[i - 1] + ((to[i] - to[i - 1]) * (x - from[i - 1]) / (from[i] - from[i - 1])), to[i - 1], to[i]);
    }
}
