namespace Evenstep.Planning.Tests.Oracle;

/// <summary>An eyepiece or zoom, alone or with one Barlow at one factor, in one telescope whose barrels fit.</summary>
internal sealed class OracleView
{
    public const string BelowRange = "below-range";
    public const string AboveRange = "above-range";
    public const string EyeRelief = "eye-relief";
    public const string ApparentField = "apparent-field";

    private const double GraceBelow = 1.25;
    private const double GraceAbove = 1.1;

    public OracleView(OracleScale scale, OracleItem eyepiece, OracleItem? barlow, double factor, bool isOwned)
    {
        Scale = scale;
        Eyepiece = eyepiece;
        Barlow = barlow;
        Factor = factor;
        IsOwned = isOwned;
        LowestPower = PowerOf(IsZoom ? eyepiece.LongestFocalLengthMm : eyepiece.FocalLengthMm);
        HighestPower = PowerOf(IsZoom ? eyepiece.ShortestFocalLengthMm : eyepiece.FocalLengthMm);
        ExitPupilMm = scale.Telescope.ApertureMm / LowestPower;
        ApparentFieldDeg = IsZoom ? eyepiece.ApparentFieldAtLongestDeg : eyepiece.ApparentFieldDeg;
        TrueFieldDeg = IsZoom ? ZoomTrueField() : FixedTrueField();
        Start = scale.Position(LowestPower);
        End = scale.Position(HighestPower);
        LnCutPower = Math.Log(scale.Cut(LowestPower));
        NotUsableBecause = RuleThatFails(scale.Problem);
        Drawbacks = OracleDrawbacks.Of(this);
        Quality = OracleQuality.Of(this);
    }

    public OracleScale Scale { get; }

    public OracleItem Eyepiece { get; }

    public OracleItem? Barlow { get; }

    public double Factor { get; }

    /// <summary>Whether its eyepiece is owned, whatever its Barlow.</summary>
    public bool IsOwned { get; }

    /// <summary>The power; of a zoom that at its longest focal length.</summary>
    public double LowestPower { get; }

    /// <summary>The power; of a zoom that at its shortest focal length.</summary>
    public double HighestPower { get; }

    public double LnCutPower { get; }

    /// <summary>Of a zoom that at its longest focal length.</summary>
    public double ExitPupilMm { get; }

    /// <summary>Of a zoom that at its longest focal length.</summary>
    public double ApparentFieldDeg { get; }

    /// <summary>Of a zoom that at the lowest of its powers within the grace beyond the range.</summary>
    public double TrueFieldDeg { get; }

    public double Start { get; }

    public double End { get; }

    public bool IsZoom => Eyepiece.Kind == OracleKind.Zoom;

    /// <summary>The first rule of use that fails, or null for a usable view.</summary>
    public string? NotUsableBecause { get; }

    /// <summary>What speaks against it, usable or not.</summary>
    public IReadOnlyList<string> Drawbacks { get; }

    /// <summary>From 0 to 1.</summary>
    public double Quality { get; }

    private string? RuleThatFails(OracleProblem problem)
    {
        if (!OracleTolerance.RatioAtLeast(HighestPower, Scale.Lowest / GraceBelow))
        {
            return BelowRange;
        }

        if (!OracleTolerance.RatioAtMost(LowestPower, Scale.Highest * (problem.Has(OracleDefinitions.HighGrace) ? GraceAbove : GraceBelow)))
        {
            return AboveRange;
        }

        if (!OracleTolerance.AtLeast(Eyepiece.EyeReliefMm, OracleEyeRelief.Needed(problem, ExitPupilMm, IsOwned)))
        {
            return EyeRelief;
        }

        return problem.Preferences.LeastApparentFieldDeg is { } least
            && !OracleTolerance.AtLeast(ApparentFieldDeg, least) ? ApparentField : null;
    }

    private double PowerOf(double focalLengthMm) => Scale.Telescope.FocalLengthMm * Factor / focalLengthMm;

    private double FixedTrueField() => Eyepiece.FieldStopMm is { } stop
        ? 2 * Math.Atan(stop / (2 * Scale.Telescope.FocalLengthMm * Factor)) * 180 / Math.PI
        : ApparentFieldDeg / LowestPower;

    private double ZoomTrueField()
    {
        double power = Math.Max(LowestPower, Scale.Lowest / GraceBelow);
        double focalLength = Scale.Telescope.FocalLengthMm * Factor / power;
        double share = (focalLength - Eyepiece.ShortestFocalLengthMm)
            / (Eyepiece.LongestFocalLengthMm - Eyepiece.ShortestFocalLengthMm);
        double apparentField = Eyepiece.ApparentFieldAtShortestDeg
            + (share * (Eyepiece.ApparentFieldAtLongestDeg - Eyepiece.ApparentFieldAtShortestDeg));
        return apparentField / power;
    }
}
