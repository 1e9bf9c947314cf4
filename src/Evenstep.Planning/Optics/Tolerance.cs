namespace Evenstep.Planning.Optics;

/// <summary>
/// Every comparison allows 1e-9 (in the logarithm of a power, in a mean of it, in a ratio), so that floating point
/// never decides: a ratio of exactly 1.15, which 23 mm and 20 mm make, is no overlap.
/// </summary>
public static class Tolerance
{
    /// <summary>1e-9: a million times finer than anything that can be read off an eyepiece, and a million times
    /// coarser than the rounding of a double.</summary>
    public const double Value = 1e-9;

    public static bool AtMost(double a, double b) => a <= b + Value;

    public static bool AtLeast(double a, double b) => a >= b - Value;

    public static bool Above(double a, double b) => a > b + Value;

    public static bool Below(double a, double b) => a < b - Value;
}
