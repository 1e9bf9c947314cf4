namespace Evenstep.Planning.Tests.Oracle.SelfTests;

/// <summary>What problems small enough to be worked by hand are made of.</summary>
internal static class SmallProblems
{
    public const double Close = 1e-12;

    /// <summary>All its exit pupils are 1 mm or less: positions are ln(power / 100), from 0 to ln 4.</summary>
    public static readonly OracleTelescope Even = new()
    {
        Name = "Even",
        ApertureMm = 100,
        FocalLengthMm = 1000,
        FocuserBarrel = OracleBarrel.Inch125,
        LowestPower = 100,
        HighestPower = 400,
    };

    /// <summary>From 200 / 6 by the pupil to 200 by the seeing; zones meet at 50, 100 and 200.</summary>
    public static readonly OracleTelescope Zoned = new()
    {
        Name = "Zoned",
        ApertureMm = 200,
        FocalLengthMm = 1000,
        FocuserBarrel = OracleBarrel.Inch2,
    };

    public static OracleProblem Problem(params OracleTelescope[] telescopes) => new()
    {
        Telescopes = telescopes,
        Catalogue = [],
        Limits = new OracleLimits { Budget = 500 },
    };

    public static OracleProblem Owning(this OracleProblem problem, params OracleItem[] items) =>
        problem with { Owned = [.. items.Select(item => new OracleOwned(item.Id, item))] };

    public static OracleProblem Selling(this OracleProblem problem, params OracleItem[] items) =>
        problem with { Catalogue = items };

    public static OracleProblem Including(this OracleProblem problem, params string[] ids) =>
        problem with { Preferences = problem.Preferences with { MustInclude = ids } };

    public static OracleProblem WithLimits(this OracleProblem problem, Func<OracleLimits, OracleLimits> change) =>
        problem with { Limits = change(problem.Limits) };

    /// <summary>In a telescope of f/5 and more it is comfortable, for all that is stated of it.</summary>
    public static OracleItem Eyepiece(string id, double focalLength, decimal price = 10, double field = 50) => new()
    {
        Id = id,
        Kind = OracleKind.Eyepiece,
        Barrel = OracleBarrel.Inch125,
        FocalLengthMm = focalLength,
        ApparentFieldDeg = field,
        EyeReliefMm = 10,
        Price = price,
    };

    public static OracleItem Zoom(string id, double shortest, double longest) => new()
    {
        Id = id,
        Kind = OracleKind.Zoom,
        Barrel = OracleBarrel.Inch125,
        ShortestFocalLengthMm = shortest,
        LongestFocalLengthMm = longest,
        ApparentFieldAtShortestDeg = 60,
        ApparentFieldAtLongestDeg = 45,
        EyeReliefMm = 15,
        Price = 100,
    };

    public static OracleItem Barlow(string id, params double[] factors) => new()
    {
        Id = id,
        Kind = OracleKind.Barlow,
        Barrel = OracleBarrel.Inch125,
        Factors = factors,
        Price = 50,
    };

    /// <summary>The one view of an eyepiece or zoom, owned or else bought, in the one telescope of a problem.</summary>
    public static OracleView View(OracleProblem problem, OracleItem eyepiece, OracleItem? barlow = null, bool isOwned = false) =>
        new(new OracleBench(problem).Scales[0], eyepiece, barlow, barlow?.Factors[0] ?? 1, isOwned);
}
