using Evenstep.Planning.Optics;

namespace Evenstep.Service.Contract.Languages;

/// <summary>
/// The one place where figures are rounded, for reading: nothing is computed from a rounded figure. Nobody can set or
/// see a finer power, ratio or field than these.
/// </summary>
internal static class Rounded
{
    /// <summary>Those of <see cref="Tolerance.Value"/>.</summary>
    private const int PlacesWithoutNoise = 9;

    public static double Power(double power) => To(power, 1);

    public static double DriftSeconds(double seconds) => To(seconds, 1);

    public static double Ratio(double ratio) => To(ratio, 3);

    public static double FieldDeg(double degrees) => To(degrees, 3);

    public static double Millimetres(double millimetres) => To(millimetres, 2);

    public static double Arcsec(double arcsec) => To(arcsec, 2);

    public static double Arcmin(double arcmin) => To(arcmin, 2);

    public static double Percent(double percent) => To(percent, 2);

    /// <summary>A mean, which is a logarithm, as a percentage.</summary>
    public static double MeanPercent(double mean) => Percent(100 * (Math.Exp(mean) - 1));

    public static double Milliseconds(TimeSpan time) => To(time.TotalMilliseconds, 1);

    /// <summary>Written with two places always.</summary>
    public static decimal Money(decimal amount) => decimal.Round(amount, 2) + 0.00m;

    /// <summary>A half is rounded up also where the noise of floating point puts it a trifle below, so that one figure reckoned in two
    /// ways reads the same.</summary>
    public static double To(double value, int decimals) => Math.Round(Math.Round(value, PlacesWithoutNoise), decimals, MidpointRounding.AwayFromZero);

    /// <summary>Whether two figures differ by nothing but the noise of floating point.</summary>
    public static bool AreEqual(double one, double other) => Math.Abs(one - other) <= Tolerance.Value * Math.Max(1, Math.Abs(one));
}
