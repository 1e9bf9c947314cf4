namespace Evenstep.Planning.Tests.Oracle;

/// <summary>The eye relief that an observer needs at an exit pupil, and the one that is comfortable there.</summary>
internal static class OracleEyeRelief
{
    private const double WithSpectaclesMm = 15;
    private const double BoughtMm = 5;
    private const double OwnedMm = 0;
    private const double ComfortableMm = 8;
    private const double QuarterWaveConstant = 1.1;

    public static double Needed(OracleProblem problem, double exitPupilMm, bool owned) =>
        AtExitPupil(problem, exitPupilMm, bareEye: owned || !problem.Has(OracleDefinitions.BoughtEyeRelief) ? OwnedMm : BoughtMm);

    public static double Comfortable(OracleProblem problem, double exitPupilMm) => AtExitPupil(problem, exitPupilMm, ComfortableMm);

    private static double AtExitPupil(OracleProblem problem, double exitPupilMm, double bareEye)
    {
        OracleObserver observer = problem.Observer;
        double asked = observer.LeastEyeReliefMm ?? (observer.WearsSpectacles ? WithSpectaclesMm : bareEye);
        return SpectaclesComeOff(problem, exitPupilMm) ? Math.Min(asked, bareEye) : asked;
    }

    private static bool SpectaclesComeOff(OracleProblem problem, double exitPupilMm)
    {
        OracleObserver observer = problem.Observer;
        if (!problem.Has(OracleDefinitions.SpectaclesOff) || !observer.WearsSpectacles || observer.AstigmatismDioptres is not { } cylinder)
        {
            return false;
        }

        return cylinder == 0
            || OracleTolerance.RatioAtMost(exitPupilMm, Math.Sqrt(QuarterWaveConstant / Math.Abs(cylinder)));
    }
}
