using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// When one view repeats another in the same telescope. Both are taken to be usable.
/// </summary>
public static class Overlap
{
    /// <summary>Of two fields in more than this ratio, the wider is an upgrade, not a repetition: common practice, no source.</summary>
    public const double WiderFieldRatio = 1.25;

    /// <summary>Up to this ratio a lower power must show more sky than the higher one, to be worth buying: common practice, no source.</summary>
    public const double NearPowersRatio = 1.5;

    /// <summary>It must show at least so many times the field: common practice, no source.</summary>
    public const double MoreSkyRatio = 1.1;

    private static readonly Step NearPowers = Step.Of(NearPowersRatio);

    /// <summary>Whether the views repeat one another; a view of fixed power never repeats a zoom.</summary>
    /// <param name="a">One view.</param>
    /// <param name="b">Another in the same telescope.</param>
    /// <param name="leastStep">Views nearer than this repeat one another.</param>
    public static bool Between(in Showing a, in Showing b, Step leastStep) =>
        a.IsZoom || b.IsZoom ? a.IsZoom && b.IsZoom && RepeatsZoom(a, b)
        : ShowTheSame(a, b, leastStep) || (a.LnPower < b.LnPower ? ShowsHardlyMoreSky(a, b) : ShowsHardlyMoreSky(b, a));

    /// <summary>Views of fixed power farther apart than this, in the logarithm of their powers cut to the range, never repeat one another.</summary>
    /// <param name="one">Either of them.</param>
    /// <param name="leastStep">Views nearer than this repeat one another.</param>
    internal static double MostDistance(in Showing one, Step leastStep) =>
        (one.Barlow is null ? Step.Max(leastStep, NearPowers) : leastStep).WithTolerance.Ln;

    private static bool ShowTheSame(in Showing a, in Showing b, Step leastStep) =>
        Tolerance.Below(Math.Abs(a.LnCutPower - b.LnCutPower), leastStep.Ln) && RepeatsFixed(a, b);

    private static bool RepeatsFixed(in Showing a, in Showing b) => (a.Barlow, b.Barlow) switch
    {
        (null, null) => !IsUpgrade(a, b),
        ({ } barlow, { } other) => a.Eyepiece.Equals(b.Eyepiece) && !barlow.Equals(other),
        _ => true,
    };

    /// <summary>Whether one is the better by a wider field: what is bought than what is owned, or either of two that are owned.</summary>
    private static bool IsUpgrade(in Showing a, in Showing b) => (a.EyepieceIsBought, b.EyepieceIsBought) switch
    {
        (true, true) => false,
        (true, false) => IsWider(a.TrueFieldDeg, b.TrueFieldDeg),
        (false, true) => IsWider(b.TrueFieldDeg, a.TrueFieldDeg),
        _ => IsWider(a.TrueFieldDeg, b.TrueFieldDeg) || IsWider(b.TrueFieldDeg, a.TrueFieldDeg),
    };

    private static bool IsWider(double fieldDeg, double than) => Tolerance.Above(fieldDeg / than, WiderFieldRatio);

    /// <summary>Less power and hardly more sky: the real powers count here, not those cut to the range.</summary>
    private static bool ShowsHardlyMoreSky(in Showing lower, in Showing higher) =>
        lower.IsBoughtForSky && higher.Barlow is null
        && Tolerance.Above(higher.LnPower, lower.LnPower) && Tolerance.Below(higher.LnPower - lower.LnPower, NearPowers.Ln)
        && Tolerance.Below(lower.TrueFieldDeg / higher.TrueFieldDeg, MoreSkyRatio);

    private static bool RepeatsZoom(in Showing a, in Showing b)
    {
        var excused = a.Eyepiece.Equals(b.Eyepiece) || (a.Barlow is not null && b.Barlow is not null);
        return !excused && Tolerance.Above(Math.Min(a.Reach.To, b.Reach.To), Math.Max(a.Reach.From, b.Reach.From));
    }
}

/// <summary>Two views of a kit that repeat one another, lower power first.</summary>
public sealed record OverlappingPair(KitView First, KitView Second)
{
    /// <summary>The ratio of the powers, cut to the range; null between zooms.</summary>
    public double? Ratio => First.View.IsZoom ? null : Second.View.CutPower / First.View.CutPower;

    /// <summary>Whether a purchase is to blame: overlaps among owned items alone are reported, never held against one.</summary>
    public bool NeedsPurchase => First.NeedsPurchase || Second.NeedsPurchase;
}
