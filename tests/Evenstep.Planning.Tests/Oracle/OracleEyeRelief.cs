namespace Evenstep.Planning.Tests.Oracle;

internal static class OracleEyeRelief
{
    private const double WithSpectaclesMm = 15;
    private const double BoughtMm = 8;
    private const double OwnedMm = 0;
    private const double QuarterWaveConstant = 1.1;

    public static double Needed(OracleObserver observer, double exitPupilMm, bool owned)
    {
        double bareEye = owned ? OwnedMm : BoughtMm;
        double asked = observer.LeastEyeReliefMm ?? (observer.WearsSpectacles ? WithSpectaclesMm : bareEye);
        return SpectaclesComeOff(observer, exitPupilMm) ? Math.Min(asked, bareEye) : asked;
    }

    private static bool SpectaclesComeOff(OracleObserver observer, double exitPupilMm)
    {
        if (!observer.WearsSpectacles || observer.AstigmatismDioptres is not { } cylinder)
        {
            return false;
        }

        return cylinder == 0
            || OracleTolerance.RatioAtMost(exitPupilMm, Math.Sqrt(QuarterWaveConstant / Math.Abs(cylinder)));
    }
}
