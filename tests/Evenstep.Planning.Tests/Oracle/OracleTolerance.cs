namespace Evenstep.Planning.Tests.Oracle;

internal static class OracleTolerance
{
    public const double Epsilon = 1e-9;

    public static bool AtMost(double value, double limit) => value <= limit + Epsilon;

    public static bool AtLeast(double value, double limit) => AtMost(limit, value);

    public static bool Under(double value, double limit) => !AtLeast(value, limit);

    public static bool Above(double value, double limit) => !AtMost(value, limit);

    public static bool RatioAtMost(double value, double limit) => AtMost(Math.Log(value), Math.Log(limit));

    public static bool RatioAtLeast(double value, double limit) => AtLeast(Math.Log(value), Math.Log(limit));
}
