namespace Evenstep.Planning.Tests.Oracle;

/// <summary>How good a view is to look at, from 0 to 1.</summary>
internal static class OracleQuality
{
    private static readonly double[] FieldClassesDeg = [50, 60, 70, 82];
    private static readonly double[] ReliefClassesMm = [8, 12, 15, 18];

    public static double Of(OracleView view)
    {
        double quality = view.Drawbacks.Count switch
        {
            0 => 1,
            1 => 0.5,
            _ => 0,
        };
        return Math.Min(quality, Bound(view));
    }

    private static double Bound(OracleView view)
    {
        OracleProblem problem = view.Scale.Problem;
        return problem.Has(OracleDefinitions.PreferredQuality) ? problem.Preferences.Prefer switch
        {
            OraclePrefer.WideField => Share(view.ApparentFieldDeg, FieldClassesDeg),
            OraclePrefer.LongEyeRelief => Share(view.Eyepiece.EyeReliefMm, ReliefClassesMm),
            _ => 1,
        } : 1;
    }

    private static double Share(double value, double[] classes) =>
        (double)classes.Count(from => OracleTolerance.AtLeast(value, from)) / classes.Length;
}
