namespace Evenstep.Planning.Tests.Oracle;

/// <summary>What speaks against a view.</summary>
internal static class OracleDrawbacks
{
    public const string SteepCone = "steep-cone";
    public const string TightEyeRelief = "tight-eye-relief";
    public const string NarrowField = "narrow-field";
    public const string WideExitPupil = "wide-exit-pupil";

    private const double EaseMm = 2;
    private const double NarrowDeg = 50;
    private const double LightLossRatio = 1.05;

    public static IReadOnlyList<string> Of(OracleView view)
    {
        (string Code, bool Applies)[] drawbacks =
        [
            (SteepCone, IsTooSteepForEyepiece(view) || IsTooSteepForBarlow(view)),
            (TightEyeRelief, IsTight(view)),
            (NarrowField, view.Scale.Problem.Has(OracleDefinitions.NarrowField) && OracleTolerance.Under(view.ApparentFieldDeg, NarrowDeg)),
            (WideExitPupil, IsWiderThanPupil(view)),
        ];
        return [.. drawbacks.Where(drawback => drawback.Applies).Select(drawback => drawback.Code)];
    }

    private static bool IsTooSteepForEyepiece(OracleView view) =>
        view.Scale.Problem.Has(OracleDefinitions.SteepCone) && IsSteeper(FocalRatio(view) * view.Factor, view.Eyepiece);

    private static bool IsTooSteepForBarlow(OracleView view) =>
        view.Scale.Problem.Has(OracleDefinitions.SteepConeOfBarlow) && view.Barlow is { } barlow && IsSteeper(FocalRatio(view), barlow);

    private static bool IsSteeper(double focalRatio, OracleItem item) =>
        item.FastestFocalRatio is { } fastest && !OracleTolerance.RatioAtLeast(focalRatio, fastest);

    private static double FocalRatio(OracleView view) => view.Scale.Telescope.FocalLengthMm / view.Scale.Telescope.ApertureMm;

    private static bool IsTight(OracleView view)
    {
        OracleProblem problem = view.Scale.Problem;
        double comfortable = OracleEyeRelief.Comfortable(problem, view.ExitPupilMm) + EaseMm;
        return problem.Has(OracleDefinitions.TightEyeRelief) && OracleTolerance.Under(view.Eyepiece.EyeReliefMm, comfortable);
    }

    private static bool IsWiderThanPupil(OracleView view)
    {
        OracleProblem problem = view.Scale.Problem;
        double widest = LightLossRatio * OracleScale.Pupil(problem.Observer);
        return problem.Has(OracleDefinitions.WideExitPupil) && !view.IsZoom && OracleTolerance.Above(view.ExitPupilMm, widest);
    }
}
