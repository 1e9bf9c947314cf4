namespace Evenstep.Planning.Optics;

/// <summary>What sets an end of a power range.</summary>
public enum RangeEnd
{
    Pupil,
    Barrel,
    Aperture,
    Seeing,
    Request,
}

/// <summary>The powers that one telescope can use with one observer under one sky, and what sets each end.</summary>
public sealed record PowerRange(double Lowest, RangeEnd LowestSetBy, double Highest, RangeEnd HighestSetBy)
{
    /// <summary>The narrowest exit pupil worth having, in mm: common practice, no source.</summary>
    public const double NarrowestExitPupilMm = 0.7;

    /// <summary>The same where planets or double stars are looked at, which bear more: common practice, no source.</summary>
    public const double NarrowestBrightExitPupilMm = 0.5;

    /// <summary>The seeing disc is magnified to 5 arcminutes, 300 arcseconds: common practice, no source.</summary>
    public const double MagnifiedSeeingArcsec = 300;

    /// <summary>Seeing when none is given, in arcseconds: common practice, no source.</summary>
    public const double UsualSeeingArcsec = 1.5;

    /// <summary>The highest power must be at least this many times the lowest.</summary>
    public const double LeastSpan = 1.5;

    /// <summary>A view up to a quarter below the lowest power counts as that power itself, for it still shows more sky: common
    /// practice, no source.</summary>
    public const double GraceBelow = 1.25;

    /// <summary>So does one up to a tenth above the highest power; beyond, it only shows the air: common practice, no source.</summary>
    public const double GraceAbove = 1.1;

    /// <summary>False for a range too narrow to plan in.</summary>
    public bool IsWideEnough => Tolerance.AtLeast(Highest / Lowest, LeastSpan);

    public double Cut(double power) => Math.Clamp(power, Lowest, Highest);

    /// <summary>The range by pupil and barrel, aperture and seeing, either end overridden by the request.</summary>
    /// <param name="telescope">The telescope.</param>
    /// <param name="observer">Whose pupil, and what they look at.</param>
    /// <param name="seeingArcsec">The seeing disc in arcseconds.</param>
    /// <param name="lowest">The lowest power asked for, or null.</param>
    /// <param name="highest">The highest power asked for, or null.</param>
    public static PowerRange Of(
        Telescope telescope, Observer observer, double seeingArcsec, double? lowest = null, double? highest = null)
    {
        var byPupil = telescope.ApertureMm / observer.DarkAdaptedPupilMm;
        var byBarrel = telescope.FocalLengthMm / telescope.FocuserBarrel.LongestPracticalFocalLengthMm();
        var byAperture = telescope.ApertureMm / (observer.ObservesBrightThings ? NarrowestBrightExitPupilMm : NarrowestExitPupilMm);
        var bySeeing = MagnifiedSeeingArcsec / Bounds.SeeingArcsec.Check(seeingArcsec, nameof(seeingArcsec));

        var (low, lowSetBy) = lowest is { } l ? (l, RangeEnd.Request)
            : byPupil >= byBarrel ? (byPupil, RangeEnd.Pupil) : (byBarrel, RangeEnd.Barrel);
        var (high, highSetBy) = highest is { } h ? (h, RangeEnd.Request)
            : byAperture <= bySeeing ? (byAperture, RangeEnd.Aperture) : (bySeeing, RangeEnd.Seeing);
        return new PowerRange(low, lowSetBy, high, highSetBy);
    }
}
