using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// When one view repeats another in the same telescope. Both are taken to be usable.
/// </summary>
public static class Overlap
{
    /// <summary>Of two fields in this ratio or more, the wider is an upgrade, not a repetition: common practice, no source.</summary>
    public const double WiderFieldRatio = 1.25;

    /// <summary>Whether the views repeat one another; a view of fixed power never repeats a zoom.</summary>
    /// <param name="a">One view.</param>
    /// <param name="b">Another in the same telescope.</param>
    /// <param name="lnLeastStep">The logarithm of the least step.</param>
    public static bool Between(in Showing a, in Showing b, double lnLeastStep) =>
        a.IsZoom || b.IsZoom ? a.IsZoom && b.IsZoom && RepeatsZoom(a, b)
        : PowersAreClose(a, b, lnLeastStep) && RepeatsFixed(a, b);

    private static bool PowersAreClose(in Showing a, in Showing b, double lnLeastStep) =>
        Tolerance.Below(Math.Abs(a.LnCutPower - b.LnCutPower), lnLeastStep);

    private static bool RepeatsFixed(in Showing a, in Showing b) => (a.Barlow, b.Barlow) switch
    {
        (null, null) => FieldsAreAlike(a.TrueFieldDeg, b.TrueFieldDeg),
        ({ } barlow, { } other) => a.Eyepiece.Equals(b.Eyepiece) && !barlow.Equals(other),
        _ => true,
    };

    private static bool FieldsAreAlike(double a, double b) =>
        Tolerance.AtMost(Math.Max(a, b) / Math.Min(a, b), WiderFieldRatio);

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
