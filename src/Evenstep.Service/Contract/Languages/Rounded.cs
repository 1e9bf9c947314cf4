using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;

namespace Evenstep.Service.Contract.Languages;

/// <summary>
/// The one place where figures are rounded, for reading: nothing is computed from a rounded figure. Nobody can set or
/// see a finer power, ratio or field than these.
/// </summary>
internal static class Rounded
{
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

    /// <summary>As remarks compare figures.</summary>
    public static double To(double value, int decimals) => RemarkValue.Rounded(value, decimals);

    /// <summary>Whether two figures differ by nothing but the noise of floating point.</summary>
    public static bool AreEqual(double one, double other) => Math.Abs(one - other) <= Tolerance.Value * Math.Max(1, Math.Abs(one));
}
