namespace Evenstep.Planning.Optics;

/// <summary>Why a view that the barrels allow is of no use to this observer.</summary>
public enum NotUsable
{
    BelowRange,
    AboveRange,
    EyeRelief,
    ApparentField,
}

/// <summary>Which formula gave a true field.</summary>
public enum TrueFieldSource
{
    FieldStop,
    ApparentField,
    Zoom,
}

/// <summary>
/// One way of looking: an ocular alone, or through one Barlow at one factor, in one telescope. Powers are angular
/// magnifications, M = F A / f (OpenStax, College Physics 2e, section 26.5). A zoom has a stretch of them; its exit pupil
/// is that at its longest focal length, and its true field that at the lowest of its powers which the range admits.
/// </summary>
public readonly record struct View
{
    /// <summary>How fast the sky turns at the equator: the Earth Rotation Angle's 15.0410672 arcseconds a second
    /// (Explanatory Supplement to the Astronomical Almanac, 3rd ed., 2013).</summary>
    public const double SkyArcsecPerSecond = 15.0410672;

    private static readonly double LnGraceBelow = Math.Log(PowerRange.GraceBelow);
    private static readonly double LnGraceAbove = Math.Log(PowerRange.GraceAbove);

    private readonly double lnPower;

    private View(TelescopeInUse telescope, Ocular ocular, Barlow? barlow, double factor)
    {
        Telescope = telescope;
        Ocular = ocular;
        Barlow = barlow;
        Factor = factor;
        lnPower = telescope.LnFocalLength + (barlow is null ? 0 : barlow.LnOf(factor)) - ocular.LnLongestFocalLength;
    }

    public TelescopeInUse Telescope { get; }

    public Ocular Ocular { get; }

    public Barlow? Barlow { get; }

    /// <summary>1 without a Barlow.</summary>
    public double Factor { get; }

    /// <summary>The power; a zoom's at its longest focal length.</summary>
    public double Power => EffectiveFocalLengthMm / Ocular.LongestFocalLengthMm;

    /// <summary>The power at the shortest focal length: the same as <see cref="Power"/> unless it is a zoom.</summary>
    public double PowerAtShortest => EffectiveFocalLengthMm / Ocular.ShortestFocalLengthMm;

    /// <summary>D / M, in mm (Sky &amp; Telescope, "A Pupil Primer").</summary>
    public double ExitPupilMm => Telescope.Telescope.ApertureMm / Power;

    /// <summary>In degrees: 2 atan(S / 2 F A) with a field stop S; without one, apparent field / power.</summary>
    public double TrueFieldDeg => Ocular switch
    {
        Eyepiece { FieldStopMm: { } stop } => 2 * Math.Atan(stop / (2 * EffectiveFocalLengthMm)) * 180 / Math.PI,
        Zoom zoom => TrueFieldOf(zoom),
        _ => Ocular.ApparentFieldAtLongestDeg / Power,
    };

    public TrueFieldSource TrueFieldFrom => Ocular switch
    {
        Eyepiece { FieldStopMm: not null } => TrueFieldSource.FieldStop,
        Zoom => TrueFieldSource.Zoom,
        _ => TrueFieldSource.ApparentField,
    };

    /// <summary>Seconds that a star at the celestial equator takes across the field of an undriven telescope.</summary>
    public double DriftSeconds => TrueFieldDeg * 3600 / SkyArcsecPerSecond;

    /// <summary>Position of the (lowest) power, cut to the range.</summary>
    public double From => Telescope.Axis.PositionOfLn(lnPower);

    /// <summary>Position of the highest power, cut to the range; the same as <see cref="From"/> unless it is a zoom.</summary>
    public double To => IsZoom ? Telescope.Axis.PositionOfLn(LnPowerAtShortest) : From;

    public bool IsZoom => Ocular is Zoom;

    public bool HasBarlow => Barlow is not null;

    /// <summary>The power cut to the range; a zoom's lowest.</summary>
    public double CutPower => Telescope.Range.Cut(Power);

    /// <summary>The logarithm of <see cref="Power"/>.</summary>
    public double LnPower => lnPower;

    /// <summary>The logarithm of <see cref="CutPower"/>, which most overlaps are judged by.</summary>
    public double LnCutPower => Math.Clamp(lnPower, Telescope.Axis.LnLowest, Telescope.Axis.LnHighest);

    private double LnPowerAtShortest => lnPower + Ocular.LnLongestFocalLength - Ocular.LnShortestFocalLength;

    private double EffectiveFocalLengthMm => Telescope.Telescope.FocalLengthMm * Factor;

    /// <summary>
    /// The view, or null where a barrel does not fit what carries it. A reticle eyepiece has none: it is not looked
    /// through for the view.
    /// </summary>
    public static View? Of(TelescopeInUse telescope, Ocular ocular, Barlow? barlow = null, double factor = 1)
    {
        var focuser = telescope.Telescope.FocuserBarrel;
        var fits = barlow is null
            ? ocular.Barrel.FitsInto(focuser)
            : ocular.Barrel.FitsInto(barlow.Barrel) && barlow.Barrel.FitsInto(focuser);
        return fits && ocular is not Eyepiece { Purpose: EyepiecePurpose.Reticle }
            ? new View(telescope, ocular, barlow, factor)
            : null;
    }

    /// <summary>Every view of an ocular through a Barlow, one a factor; none where a barrel does not fit.</summary>
    public static IEnumerable<View> Through(TelescopeInUse telescope, Ocular ocular, Barlow barlow)
    {
        foreach (var factor in barlow.Factors)
        {
            if (Of(telescope, ocular, barlow, factor) is { } view)
            {
                yield return view;
            }
        }
    }

    /// <summary>Null for a power within the range or little beyond it; a zoom's powers must reach into that.</summary>
    public NotUsable? PowerOutsideRange() => PowerOutsideRange(Telescope.Axis, lnPower, LnPowerAtShortest);

    /// <summary>Whether the powers, by their logarithms, of an ocular at some factor are near enough to the range: what
    /// rules out most views soonest.</summary>
    internal static bool IsPowerInRange(TelescopeInUse telescope, Ocular ocular, double lnFactor)
    {
        var lnAmplified = telescope.LnFocalLength + lnFactor;
        return PowerOutsideRange(telescope.Axis, lnAmplified - ocular.LnLongestFocalLength, lnAmplified - ocular.LnShortestFocalLength) is null;
    }

    private static NotUsable? PowerOutsideRange(PowerAxis axis, double lnLowest, double lnHighest) =>
        Tolerance.Below(lnHighest + LnGraceBelow, axis.LnLowest) ? NotUsable.BelowRange
        : Tolerance.Above(lnLowest - LnGraceAbove, axis.LnHighest) ? NotUsable.AboveRange
        : null;

    /// <summary>Why the view is of no use to the observer: the first reason that applies; null for a usable view.</summary>
    /// <param name="observer">Who looks.</param>
    /// <param name="leastApparentFieldDeg">The narrowest apparent field put up with, or null.</param>
    /// <param name="bought">Whether the ocular is being bought: more eye relief is asked of it.</param>
    public NotUsable? NotUsableBecause(Observer observer, double? leastApparentFieldDeg, bool bought)
    {
        if (PowerOutsideRange() is { } outside)
        {
            return outside;
        }

        if (Tolerance.Below(Ocular.EyeReliefMm, observer.NeededEyeReliefMm(ExitPupilMm, bought)))
        {
            return NotUsable.EyeRelief;
        }

        return leastApparentFieldDeg is { } least && Tolerance.Below(Ocular.ApparentFieldAtLongestDeg, least)
            ? NotUsable.ApparentField
            : null;
    }

    /// <summary>What speaks against the view, usable or not.</summary>
    public Drawbacks DrawbacksFor(Observer observer)
    {
        var exitPupilMm = ExitPupilMm;
        var focalRatio = Telescope.Telescope.FocalRatio;
        var isSteep = Ocular.IsTooSimpleFor(focalRatio * Factor) || (Barlow?.IsTooSimpleFor(focalRatio) ?? false);
        var isTight = Tolerance.Below(
            Ocular.EyeReliefMm, observer.ComfortableEyeReliefAtMm(exitPupilMm) + DrawbackLimits.SpareEyeReliefMm);
        var isNarrow = Tolerance.Below(Ocular.ApparentFieldAtLongestDeg, DrawbackLimits.NarrowFieldDeg);
        var isWide = !IsZoom && Tolerance.Above(exitPupilMm / observer.DarkAdaptedPupilMm, DrawbackLimits.ExitPupilRatio);
        return (isSteep ? Drawbacks.SteepCone : 0) | (isTight ? Drawbacks.TightEyeRelief : 0)
            | (isNarrow ? Drawbacks.NarrowField : 0) | (isWide ? Drawbacks.WideExitPupil : 0);
    }

    /// <summary>At the lowest power that the range admits.</summary>
    private double TrueFieldOf(Zoom zoom)
    {
        var lowestAdmitted = Math.Min(Math.Max(Power, Telescope.Range.Lowest / PowerRange.GraceBelow), PowerAtShortest);
        return zoom.ApparentFieldDegAt(EffectiveFocalLengthMm / lowestAdmitted) / lowestAdmitted;
    }
}
