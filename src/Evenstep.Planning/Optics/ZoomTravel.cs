namespace Evenstep.Planning.Optics;

/// <summary>
/// The focal lengths of a zoom, in one view, whose powers the range admits, and how the true field changes along them.
/// The apparent field is linear in focal length, P + Q f, and the power is F A / f; so the true field is f (P + Q f) / F A, a
/// parabola, which rises along the whole travel or up to a crest.
/// </summary>
internal readonly record struct ZoomTravel
{
    private readonly double shortestMm;
    private readonly double longestMm;
    private readonly double p;
    private readonly double q;
    private readonly double effectiveFocalLengthMm;

    private ZoomTravel(double shortestMm, double longestMm, Zoom zoom, double effectiveFocalLengthMm)
    {
        this.shortestMm = shortestMm;
        this.longestMm = longestMm;
        this.effectiveFocalLengthMm = effectiveFocalLengthMm;
        q = (zoom.ApparentFieldAtLongestDeg - zoom.ApparentFieldAtShortestDeg) / (zoom.LongestFocalLengthMm - zoom.ShortestFocalLengthMm);
        p = zoom.ApparentFieldAtShortestDeg - (q * zoom.ShortestFocalLengthMm);
    }

    /// <summary>Where the true field is widest, in mm.</summary>
    private double WidestMm => q < 0 ? Math.Clamp(-p / (2 * q), shortestMm, longestMm) : longestMm;

    public static ZoomTravel Of(in View view, Zoom zoom)
    {
        var (range, effectiveMm) = (view.Telescope.Range, view.Telescope.Telescope.FocalLengthMm * view.Factor);
        var longest = Math.Clamp(effectiveMm * PowerRange.GraceBelow / range.Lowest, zoom.ShortestFocalLengthMm, zoom.LongestFocalLengthMm);
        var shortest = Math.Clamp(effectiveMm / PowerRange.GraceAbove / range.Highest, zoom.ShortestFocalLengthMm, longest);
        return new ZoomTravel(shortest, longest, zoom, effectiveMm);
    }

    /// <summary>The focal length nearest to the wanted one that shows at least this field; the one that shows the widest field
    /// where none does.</summary>
    public double Nearest(double wantedMm, double leastFieldDeg)
    {
        var (nearest, widest) = (Math.Clamp(wantedMm, shortestMm, longestMm), WidestMm);
        return TrueFieldDeg(nearest) >= leastFieldDeg ? nearest
            : TrueFieldDeg(widest) <= leastFieldDeg ? widest
            : Math.Clamp(WhereField(leastFieldDeg, nearest < widest), Math.Min(nearest, widest), Math.Max(nearest, widest));
    }

    private double TrueFieldDeg(double mm) => mm * (p + (q * mm)) / effectiveFocalLengthMm;

    /// <summary>Where the parabola passes through a field: on its way up to the crest, or down from it.</summary>
    private double WhereField(double degrees, bool onTheWayUp)
    {
        var c = degrees * effectiveFocalLengthMm;
        var root = Math.Sqrt(Math.Max(0, (p * p) + (4 * q * c)));
        return 2 * c / (onTheWayUp ? p + root : p - root);
    }
}
