namespace Evenstep.Planning.Tests.Oracle;

internal static class OracleOverlap
{
    private const double DefaultLeastStep = 1.15;
    private const double SameFieldRatio = 1.25;

    /// <summary>Whether two usable views overlap.</summary>
    public static bool Overlap(OracleView first, OracleView second, OracleProblem problem)
    {
        if (first.Scale != second.Scale || first.IsZoom != second.IsZoom)
        {
            return false;
        }

        return first.IsZoom
            ? ZoomsOverlap(first, second)
            : FixedOverlap(first, second, problem.Preferences.LeastStep ?? DefaultLeastStep);
    }

    private static bool FixedOverlap(OracleView first, OracleView second, double leastStep)
    {
        double lnRatio = Math.Abs(first.LnCutPower - second.LnCutPower);
        if (!OracleTolerance.Under(lnRatio, Math.Log(leastStep)))
        {
            return false;
        }

        return (first.Barlow, second.Barlow) switch
        {
            (null, null) => FieldsAreAlike(first, second),
            ({ } one, { } other) => first.Eyepiece == second.Eyepiece && one != other,
            _ => true,
        };
    }

    private static bool FieldsAreAlike(OracleView first, OracleView second)
    {
        double wide = Math.Max(first.TrueFieldDeg, second.TrueFieldDeg);
        double narrow = Math.Min(first.TrueFieldDeg, second.TrueFieldDeg);
        return OracleTolerance.RatioAtMost(wide / narrow, SameFieldRatio);
    }

    private static bool ZoomsOverlap(OracleView first, OracleView second)
    {
        bool bothThroughBarlows = first.Barlow is not null && second.Barlow is not null;
        if (bothThroughBarlows || first.Eyepiece == second.Eyepiece)
        {
            return false;
        }

        double shared = Math.Min(first.End, second.End) - Math.Max(first.Start, second.Start);
        return OracleTolerance.Above(shared, 0);
    }
}
