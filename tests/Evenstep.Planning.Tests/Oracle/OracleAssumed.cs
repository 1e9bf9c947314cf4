namespace Evenstep.Planning.Tests.Oracle;

/// <summary>What is taken for the figures of an eyepiece that are not stated.</summary>
internal static class OracleAssumed
{
    private const double DegreesPerRadian = 57.3;
    private const double UsualFieldDeg = 50;
    private const double LeastFieldDeg = 10;
    private const double GreatestFieldDeg = 130;
    private const double ReliefPerFocalLength = 0.7;
    private const double GreatestReliefMm = 20;
    private const double SomeReliefMm = 10;

    public static double ApparentFieldDeg(OracleItem eyepiece) => eyepiece.FieldStopMm is { } stop
        ? Math.Min(Math.Max(DegreesPerRadian * stop / eyepiece.FocalLengthMm, LeastFieldDeg), GreatestFieldDeg)
        : UsualFieldDeg;

    public static double EyeReliefMm(OracleItem eyepiece) => Math.Min(ReliefPerFocalLength * eyepiece.FocalLengthMm, GreatestReliefMm);

    /// <summary>The same problem with what is not stated replaced where it must not be assumed.</summary>
    public static OracleProblem Settled(OracleProblem problem) =>
        problem.Has(OracleDefinitions.AssumedField) && problem.Has(OracleDefinitions.AssumedEyeRelief) ? problem : problem with
        {
            Owned = [.. problem.Owned.Select(owned => owned with { Item = owned.Item is { } item ? Settled(item, problem) : null })],
            Catalogue = [.. problem.Catalogue.Select(item => Settled(item, problem))],
        };

    private static OracleItem Settled(OracleItem item, OracleProblem problem) => item with
    {
        StatedApparentFieldDeg = item.StatedApparentFieldDeg ?? (problem.Has(OracleDefinitions.AssumedField) ? null : UsualFieldDeg),
        StatedEyeReliefMm = item.StatedEyeReliefMm ?? (problem.Has(OracleDefinitions.AssumedEyeRelief) ? null : SomeReliefMm),
    };
}
