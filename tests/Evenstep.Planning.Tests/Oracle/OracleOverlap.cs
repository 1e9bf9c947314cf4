namespace Evenstep.Planning.Tests.Oracle;

internal static class OracleOverlap
{
    private const double DefaultLeastStep = 1.15;
    private const double WiderFieldRatio = 1.25;
    private const double LowPowerExitPupilMm = 2;
    private const double LowPowerStep = 1.5;
    private const double MoreSkyRatio = 1.1;

    /// <summary>Whether two usable views overlap.</summary>
    public static bool Overlap(OracleView first, OracleView second)
    {
        if (first.Scale != second.Scale || first.IsZoom != second.IsZoom)
        {
            return false;
        }

        return first.IsZoom
            ? ZoomsOverlap(first, second)
            : ShowTheSame(first, second) || HasLessPowerAndHardlyMoreSky(first, second) || HasLessPowerAndHardlyMoreSky(second, first);
    }

    private static bool ShowTheSame(OracleView first, OracleView second)
    {
        double leastStep = first.Scale.Problem.Preferences.LeastStep ?? DefaultLeastStep;
        double lnRatio = Math.Abs(first.LnCutPower - second.LnCutPower);
        if (!OracleTolerance.Under(lnRatio, Math.Log(leastStep)))
        {
            return false;
        }

        return (first.Barlow, second.Barlow) switch
        {
            (null, null) => !IsBetterByField(first, second),
            ({ } one, { } other) => first.Eyepiece == second.Eyepiece && one != other,
            _ => true,
        };
    }

    private static bool IsBetterByField(OracleView first, OracleView second) => (first.IsOwned, second.IsOwned) switch
    {
        _ when !first.Scale.Problem.Has(OracleDefinitions.Upgrade) => IsWider(first, second) || IsWider(second, first),
        (true, true) => IsWider(first, second) || IsWider(second, first),
        (true, false) => IsWider(second, first),
        (false, true) => IsWider(first, second),
        _ => false,
    };

    private static bool IsWider(OracleView view, OracleView other) =>
        !OracleTolerance.RatioAtMost(view.TrueFieldDeg / other.TrueFieldDeg, WiderFieldRatio);

    private static bool HasLessPowerAndHardlyMoreSky(OracleView low, OracleView high)
    {
        double lnRatio = Math.Log(high.LowestPower / low.LowestPower);
        return low.Scale.Problem.Has(OracleDefinitions.LessPower)
            && low.Barlow is null && high.Barlow is null
            && !low.IsOwned
            && OracleTolerance.AtLeast(low.ExitPupilMm, LowPowerExitPupilMm)
            && OracleTolerance.Above(lnRatio, 0) && OracleTolerance.Under(lnRatio, Math.Log(LowPowerStep))
            && !OracleTolerance.RatioAtLeast(low.TrueFieldDeg / high.TrueFieldDeg, MoreSkyRatio);
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
