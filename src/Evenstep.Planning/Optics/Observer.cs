using System.Collections.Immutable;

namespace Evenstep.Planning.Optics;

/// <summary>Who looks: the eye, the spectacles, and what they like to look at.</summary>
public sealed record Observer
{
    /// <summary>Eye relief that spectacles want, in mm: common practice, no source.</summary>
    public const double SpectaclesEyeReliefMm = 15;

    /// <summary>Eye relief below which nothing is recommended to anybody, in mm: common practice, no source.</summary>
    public const double LeastBoughtEyeReliefMm = 5;

    /// <summary>Eye relief that a bare eye finds comfortable, in mm: common practice, no source.</summary>
    public const double ComfortableEyeReliefMm = 8;

    public double? Age
    {
        get;
        init => field = value is { } years ? Bounds.AgeYears.Check(years, nameof(Age)) : null;
    }

    /// <summary>The measured dark-adapted pupil, in mm.</summary>
    public double? PupilMm
    {
        get;
        init => field = value is { } mm ? Bounds.PupilMm.Check(mm, nameof(PupilMm)) : null;
    }

    public bool WearsSpectacles { get; init; }

    /// <summary>The cylinder of the prescription, in dioptres; its sign does not matter. Null if not known.</summary>
    public double? AstigmatismDioptres
    {
        get;
        init => field = value is { } dioptres ? Bounds.CylinderDioptres.Check(dioptres, nameof(AstigmatismDioptres)) : null;
    }

    public double? LeastEyeReliefMm
    {
        get;
        init => field = value is { } mm ? Bounds.EyeReliefMm.Check(mm, nameof(LeastEyeReliefMm)) : null;
    }

    public ImmutableArray<Interest> Observes { get; init; } = [];

    /// <summary>Whether what they look at bears a narrower exit pupil.</summary>
    internal bool ObservesBrightThings => Observes.Contains(Interest.Planets) || Observes.Contains(Interest.DoubleStars);

    public double DarkAdaptedPupilMm =>
        PupilMm ?? (Age is { } age ? DarkAdaptedPupil.MmAtAge(age) : DarkAdaptedPupil.UnknownMm);

    /// <summary>
    /// The widest exit pupil, in mm, at which this observer may take the spectacles off; infinite if near- or
    /// farsightedness is all there is (refocusing removes it), null if the spectacles stay on (or are not worn).
    /// Astigmatism of C dioptres puts a wave of C p^2 / 8 peak to valley across an exit pupil p; at a quarter wave of
    /// 550 nm that is p = sqrt(1.1 / C) mm. A criterion, no measurement: eyesight belongs to an eye-care professional.
    /// </summary>
    public double? SpectaclesOffUpToExitPupilMm => (WearsSpectacles, AstigmatismDioptres) switch
    {
        (true, 0.0) => double.PositiveInfinity,
        (true, { } cylinder) => Math.Sqrt(1.1 / Math.Abs(cylinder)),
        _ => null,
    };

    /// <summary>The eye relief, in mm, needed at an exit pupil in mm, for an ocular owned or being bought.</summary>
    public double NeededEyeReliefMm(double exitPupilMm, bool bought)
    {
        var bareEye = bought ? LeastBoughtEyeReliefMm : 0;
        var needed = LeastEyeReliefMm ?? (WearsSpectacles ? SpectaclesEyeReliefMm : bareEye);
        return AreSpectaclesOff(exitPupilMm) ? Math.Min(needed, bareEye) : needed;
    }

    /// <summary>Whether the spectacles that are worn may come off at an exit pupil in mm, and must, for the eye relief in mm is too
    /// short for them.</summary>
    public bool MustTakeSpectaclesOff(double exitPupilMm, double eyeReliefMm) =>
        AreSpectaclesOff(exitPupilMm) && Tolerance.Below(eyeReliefMm, LeastEyeReliefMm ?? SpectaclesEyeReliefMm);

    /// <summary>The eye relief, in mm, that is comfortable at an exit pupil in mm.</summary>
    public double ComfortableEyeReliefAtMm(double exitPupilMm)
    {
        var comfortable = LeastEyeReliefMm ?? (WearsSpectacles ? SpectaclesEyeReliefMm : ComfortableEyeReliefMm);
        return AreSpectaclesOff(exitPupilMm) ? Math.Min(comfortable, ComfortableEyeReliefMm) : comfortable;
    }

    /// <summary>Whether spectacles that are worn may come off at an exit pupil in mm.</summary>
    internal bool AreSpectaclesOff(double exitPupilMm) =>
        SpectaclesOffUpToExitPupilMm is { } widest && Tolerance.AtMost(exitPupilMm / widest, 1);
}
