namespace Evenstep.Service.Catalogues.Warnings;

/// <summary>
/// The apparent field that a field stop gives. It depends on the eyepiece's distortion: 2·atan(S / 2f) where straight lines
/// stay straight, S / f in radians where the power is the same all over the field. Makers choose something in between.
/// </summary>
internal static class ImpliedField
{
    private const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>Of the fields possible, in degrees, the one nearest to a field claimed.</summary>
    public static double Nearest(double stopMm, double focalLengthMm, double claimedDeg)
    {
        var straight = 2 * Math.Atan(stopMm / (2 * focalLengthMm)) * DegreesPerRadian;
        var even = stopMm / focalLengthMm * DegreesPerRadian;
        return Math.Clamp(claimedDeg, straight, even);
    }

    /// <summary>The narrowest stop that can give a field.</summary>
    public static double NarrowestStopMm(double focalLengthMm, double fieldDeg) => focalLengthMm * fieldDeg / DegreesPerRadian;
}
