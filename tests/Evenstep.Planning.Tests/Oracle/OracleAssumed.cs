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

    public static double ApparentFieldDeg(OracleItem eyepiece) => eyepiece.FieldStopMm is { } stop
        ? Math.Min(Math.Max(DegreesPerRadian * stop / eyepiece.FocalLengthMm, LeastFieldDeg), GreatestFieldDeg)
        : UsualFieldDeg;

    public static double EyeReliefMm(OracleItem eyepiece) => Math.Min(ReliefPerFocalLength * eyepiece.FocalLengthMm, GreatestReliefMm);
}
