using System.Collections.Immutable;

namespace Evenstep.Planning.Optics;

/// <summary>What a shop sells to go between telescope and eye: an eyepiece, a zoom or a Barlow.</summary>
public abstract record Optic(Barrel Barrel)
{
    /// <summary>The steepest light cone it is made for, as a focal ratio; null if not stated.</summary>
    public double? FastestFocalRatio
    {
        get;
        init => field = value is { } ratio ? Bounds.FocalRatio.Check(ratio, nameof(FastestFocalRatio)) : null;
    }

    /// <summary>Whether it is not made for so steep a cone, given as a focal ratio.</summary>
    public bool IsTooSimpleFor(double focalRatio) => FastestFocalRatio is { } fastest && Tolerance.Below(focalRatio / fastest, 1);
}

/// <summary>An optic one looks into, of one focal length or of a range of them.</summary>
public abstract record Ocular(Barrel Barrel, double EyeReliefMm) : Optic(Barrel)
{
    public double EyeReliefMm { get; } = Bounds.EyeReliefMm.Check(EyeReliefMm, nameof(EyeReliefMm));

    public abstract double LongestFocalLengthMm { get; }

    public abstract double ShortestFocalLengthMm { get; }

    /// <summary>The logarithm of the longest focal length: powers are compared by their logarithms.</summary>
    internal double LnLongestFocalLength { get; private protected init; }

    internal double LnShortestFocalLength { get; private protected init; }

    /// <summary>Apparent field in degrees; a zoom's at its longest focal length.</summary>
    public abstract double ApparentFieldAtLongestDeg { get; }

    /// <summary>Apparent field in degrees at a focal length in mm that the ocular has.</summary>
    public abstract double ApparentFieldDegAt(double focalLengthMm);
}

public enum EyepiecePurpose
{
    Observing,

    /// <summary>For measuring or guiding with illuminated marks: no views for looking.</summary>
    Reticle,
}

/// <summary>An eyepiece of one focal length. A field stop, if known, gives the true field more exactly.</summary>
public sealed record Eyepiece : Ocular
{
    public Eyepiece(double focalLengthMm, double apparentFieldDeg, double eyeReliefMm, Barrel barrel)
        : base(barrel, eyeReliefMm)
    {
        FocalLengthMm = Bounds.EyepieceFocalLengthMm.Check(focalLengthMm, nameof(focalLengthMm));
        ApparentFieldDeg = Bounds.ApparentFieldDeg.Check(apparentFieldDeg, nameof(apparentFieldDeg));
        LnLongestFocalLength = LnShortestFocalLength = Math.Log(focalLengthMm);
    }

    public double FocalLengthMm { get; }

    public double ApparentFieldDeg { get; }

    /// <summary>Whether the apparent field was not known, but assumed by <see cref="Of"/>.</summary>
    public bool IsApparentFieldAssumed { get; private init; }

    /// <summary>Whether the eye relief was not known, but assumed by <see cref="Of"/>.</summary>
    public bool IsEyeReliefAssumed { get; private init; }

    public double? FieldStopMm
    {
        get;
        init => field = value is { } mm ? Bounds.FieldStopMm.Check(mm, nameof(FieldStopMm)) : null;
    }

    public EyepiecePurpose Purpose { get; init; }

    /// <summary>An eyepiece of which not all may be known: see <see cref="AssumedFigures"/>.</summary>
    /// <param name="focalLengthMm">In mm.</param>
    /// <param name="apparentFieldDeg">In degrees, or null.</param>
    /// <param name="eyeReliefMm">In mm, or null.</param>
    /// <param name="fieldStopMm">In mm, or null.</param>
    /// <param name="barrel">Its own.</param>
    public static Eyepiece Of(double focalLengthMm, double? apparentFieldDeg, double? eyeReliefMm, double? fieldStopMm, Barrel barrel) => new(
        focalLengthMm,
        apparentFieldDeg ?? AssumedFigures.ApparentFieldDeg(focalLengthMm, fieldStopMm),
        eyeReliefMm ?? AssumedFigures.EyeReliefMm(focalLengthMm),
        barrel)
    {
        FieldStopMm = fieldStopMm,
        IsApparentFieldAssumed = apparentFieldDeg is null,
        IsEyeReliefAssumed = eyeReliefMm is null,
    };

    public override double LongestFocalLengthMm => FocalLengthMm;

    public override double ShortestFocalLengthMm => FocalLengthMm;

    public override double ApparentFieldAtLongestDeg => ApparentFieldDeg;

    public override double ApparentFieldDegAt(double focalLengthMm) => ApparentFieldDeg;
}

/// <summary>An eyepiece of variable focal length; its apparent field changes along the way.</summary>
public sealed record Zoom : Ocular
{
    public Zoom(
        double shortestFocalLengthMm,
        double longestFocalLengthMm,
        double apparentFieldAtShortestDeg,
        double apparentFieldAtLongestDeg,
        double eyeReliefMm,
        Barrel barrel)
        : base(barrel, eyeReliefMm)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(shortestFocalLengthMm, longestFocalLengthMm);
        ShortestFocalLengthMm = Bounds.EyepieceFocalLengthMm.Check(shortestFocalLengthMm, nameof(shortestFocalLengthMm));
        LongestFocalLengthMm = Bounds.EyepieceFocalLengthMm.Check(longestFocalLengthMm, nameof(longestFocalLengthMm));
        ApparentFieldAtShortestDeg = Bounds.ApparentFieldDeg.Check(apparentFieldAtShortestDeg, nameof(apparentFieldAtShortestDeg));
        ApparentFieldAtLongestDeg = Bounds.ApparentFieldDeg.Check(apparentFieldAtLongestDeg, nameof(apparentFieldAtLongestDeg));
        LnShortestFocalLength = Math.Log(shortestFocalLengthMm);
        LnLongestFocalLength = Math.Log(longestFocalLengthMm);
    }

    public override double ShortestFocalLengthMm { get; }

    public override double LongestFocalLengthMm { get; }

    public double ApparentFieldAtShortestDeg { get; }

    public override double ApparentFieldAtLongestDeg { get; }

    /// <summary>Between the ends the apparent field is taken as linear in focal length: common practice, no source.</summary>
    public override double ApparentFieldDegAt(double focalLengthMm)
    {
        var along = (focalLengthMm - ShortestFocalLengthMm) / (LongestFocalLengthMm - ShortestFocalLengthMm);
        return ApparentFieldAtShortestDeg + (along * (ApparentFieldAtLongestDeg - ApparentFieldAtShortestDeg));
    }
}

/// <summary>
/// A lens that lengthens the telescope's focal length by one of its factors, one at a time. In the thin-lens limit the
/// factor is 1 + d / |f|, d from the lens to the final focus, f its own focal length. It leaves eye relief as it is
/// (in truth it lengthens that of simple eyepieces a little).
/// </summary>
public sealed record Barlow : Optic
{
    private readonly ImmutableArray<double> lnFactors;

    public Barlow(ImmutableArray<double> factors, Barrel barrel)
        : base(barrel)
    {
        if (factors.IsDefaultOrEmpty || factors.Length > 3 || factors.Distinct().Count() != factors.Length)
        {
            throw new ArgumentException("A Barlow has 1 to 3 different factors.", nameof(factors));
        }

        foreach (var factor in factors)
        {
            Bounds.BarlowFactor.Check(factor, nameof(factors));
        }

        Factors = factors.Sort();
        lnFactors = [.. Factors.Select(Math.Log)];
    }

    /// <summary>Ascending.</summary>
    public ImmutableArray<double> Factors { get; }

    /// <summary>The logarithm of one of the factors.</summary>
    internal double LnOf(double factor)
    {
        var index = Factors.IndexOf(factor);
        return index < 0 ? Math.Log(factor) : lnFactors[index];
    }
}
