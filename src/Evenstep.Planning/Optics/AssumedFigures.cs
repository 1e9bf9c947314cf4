namespace Evenstep.Planning.Optics;

/// <summary>What an eyepiece is taken to be where its maker does not say: assumed figures decide like known ones, and every answer
/// names them.</summary>
public static class AssumedFigures
{
    /// <summary>The field of a plain eyepiece, in degrees: common practice, no source.</summary>
    public const double PlainApparentFieldDeg = 50;

    /// <summary>What a plain eyepiece has of its focal length as eye relief: common practice, no source.</summary>
    private const double EyeReliefOfFocalLength = 0.7;

    /// <summary>In mm; long eyepieces have no more: common practice, no source.</summary>
    private const double MostEyeReliefMm = 20;

    /// <summary>Degrees in a radian, as the trade rounds it: an undistorted field is 57.3 S / f wide.</summary>
    private const double DegreesPerRadian = 57.3;

    /// <summary>In degrees: by the field stop, where it is known.</summary>
    /// <param name="focalLengthMm">In mm.</param>
    /// <param name="fieldStopMm">In mm, or null.</param>
    public static double ApparentFieldDeg(double focalLengthMm, double? fieldStopMm) => fieldStopMm is { } stop
        ? Math.Clamp(DegreesPerRadian * stop / focalLengthMm, Bounds.ApparentFieldDeg.Least, Bounds.ApparentFieldDeg.Most)
        : PlainApparentFieldDeg;

    /// <summary>In mm.</summary>
    /// <param name="focalLengthMm">In mm.</param>
    public static double EyeReliefMm(double focalLengthMm) => Math.Min(EyeReliefOfFocalLength * focalLengthMm, MostEyeReliefMm);
}
