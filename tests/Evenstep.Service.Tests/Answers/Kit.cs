using System.Text.Json;

namespace Evenstep.Service.Tests.Answers;

/// <summary>What a client reads of a set of items in its telescopes.</summary>
internal sealed record Figures(double? LargestStep, double? MeanMismatchPercent, double? MeanExcessPercent, double ServedPercent, double ComfortablePercent);

internal sealed record Ladder(
    double? LargestStep, double? MeanMismatchPercent, double? MeanExcessPercent, double ServedPercent, double ComfortablePercent,
    IReadOnlyList<View> Views, IReadOnlyList<Step> Steps, IReadOnlyList<Overlap> Overlaps, IReadOnlyList<Target>? Targets)
{
    public Figures Figures() => new(LargestStep, MeanMismatchPercent, MeanExcessPercent, ServedPercent, ComfortablePercent);
}

internal sealed record View(
    string EyepieceId, string? BarlowId, double Factor, double TrueFieldDeg, string TrueFieldFrom, double ExitPupilMm, double Power, double? PowerAtShortest,
    double ApparentFieldDeg, double EyeReliefMm, double DriftSeconds, bool Usable, string? NotUsableBecause, IReadOnlyList<string> Drawbacks);

internal sealed record ViewName(string EyepieceId, string? BarlowId, double Factor);

internal sealed record Step(double From, double To, double Ratio, double Weighed, bool Enough);

internal sealed record Overlap(ViewName First, ViewName Second, double? Ratio);

internal sealed record Target(string? Id, string Name, string? CommonName, double WidthArcmin, double WantedExitPupilMm, bool Fits, TargetView? View);

internal sealed record TargetView(
    string EyepieceId, string? BarlowId, double Factor, double FocalLengthMm, double Power, double ExitPupilMm, double TrueFieldDeg);

internal sealed record PowerRange(double Lowest, string LowestSetBy, double Highest, string HighestSetBy);

internal sealed record Resolution(double RayleighArcsec, double DawesArcsec);

internal sealed record Framing(string? Name, double WidthDeg, string? Telescope, bool Met, double? TrueFieldDeg);

internal sealed record Remark(string Code, string Text, JsonElement Values);
