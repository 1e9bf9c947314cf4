using System.Text.Json;
using Evenstep.Planning.Optics;

namespace Evenstep.Service.Kits;

/// <summary>How well a kit serves. Null where there is nothing to look through.</summary>
internal sealed record FiguresAnswer
{
    /// <summary>The largest step between usable views, each zone of powers by its weight.</summary>
    public required double? LargestStep { get; init; }

    /// <summary>How far a wanted power is from the nearest usable view, on average, in percent.</summary>
    public required double? MeanMismatchPercent { get; init; }

    /// <summary>The same, counting only what a step that is enough leaves over.</summary>
    public required double? MeanExcessPercent { get; init; }

    /// <summary>The share of the useful powers that the kit serves, in percent.</summary>
    public required double ServedPercent { get; init; }
}

/// <summary>What one telescope shows.</summary>
internal sealed record LadderAnswer
{
    /// <summary>The largest step between usable views, each zone of powers by its weight.</summary>
    public required double? LargestStep { get; init; }

    /// <summary>How far a wanted power is from the nearest usable view, on average, in percent.</summary>
    public required double? MeanMismatchPercent { get; init; }

    /// <summary>The same, counting only what a step that is enough leaves over.</summary>
    public required double? MeanExcessPercent { get; init; }

    /// <summary>The share of the useful powers that the kit serves, in percent.</summary>
    public required double ServedPercent { get; init; }

    /// <summary>Every view the barrels allow, usable or not, by power.</summary>
    public required IReadOnlyList<ViewAnswer> Views { get; init; }

    /// <summary>The jumps between neighbouring usable views, those at both ends included.</summary>
    public required IReadOnlyList<StepAnswer> Steps { get; init; }

    /// <summary>Every pair of views that repeat one another, lower power first.</summary>
    public required IReadOnlyList<OverlapAnswer> Overlaps { get; init; }

    /// <summary>Which view is for what; null unless asked for.</summary>
    public required IReadOnlyList<JsonElement>? Targets { get; init; }
}

/// <summary>Names a view.</summary>
internal sealed record ViewNameAnswer
{
    /// <summary>The eyepiece or zoom looked into.</summary>
    public required string EyepieceId { get; init; }

    /// <summary>The Barlow it is looked through.</summary>
    public required string? BarlowId { get; init; }

    /// <summary>The Barlow's amplification; 1 without one.</summary>
    public required double Factor { get; init; }
}

/// <summary>One way of looking: an eyepiece or zoom, alone or through a Barlow.</summary>
internal sealed record ViewAnswer
{
    /// <summary>The eyepiece or zoom looked into.</summary>
    public required string EyepieceId { get; init; }

    /// <summary>The Barlow it is looked through.</summary>
    public required string? BarlowId { get; init; }

    /// <summary>The Barlow's amplification; 1 without one.</summary>
    public required double Factor { get; init; }

    /// <summary>True field, in degrees.</summary>
    public required double TrueFieldDeg { get; init; }

    /// <summary>What the true field was worked out from.</summary>
    public required TrueFieldSource TrueFieldFrom { get; init; }

    /// <summary>Exit pupil, in mm; a zoom's at its longest focal length.</summary>
    public required double ExitPupilMm { get; init; }

    /// <summary>Power; a zoom's at its longest focal length.</summary>
    public required double Power { get; init; }

    /// <summary>A zoom's power at its shortest focal length; null for a fixed one.</summary>
    public required double? PowerAtShortest { get; init; }

    /// <summary>Apparent field, in degrees; a zoom's at its longest focal length.</summary>
    public required double ApparentFieldDeg { get; init; }

    /// <summary>Eye relief, in mm.</summary>
    public required double EyeReliefMm { get; init; }

    /// <summary>How long a star at the celestial equator takes across the field of an undriven telescope, in seconds.</summary>
    public required double DriftSeconds { get; init; }

    /// <summary>Whether the view counts.</summary>
    public required bool Usable { get; init; }

    /// <summary>The first reason against it; null for a usable view.</summary>
    public required NotUsable? NotUsableBecause { get; init; }
}

/// <summary>A jump between neighbouring views, or between a view and an end of the power range.</summary>
internal sealed record StepAnswer
{
    /// <summary>The lower power, cut to the range.</summary>
    public required double From { get; init; }

    /// <summary>The higher power, cut to the range.</summary>
    public required double To { get; init; }

    /// <summary>The ratio of the powers; its square at an end of the range.</summary>
    public required double Ratio { get; init; }

    /// <summary>The step as it counts, each zone of powers by its weight.</summary>
    public required double Weighed { get; init; }

    /// <summary>Whether it is as good as none.</summary>
    public required bool Enough { get; init; }
}

/// <summary>Two views that repeat one another.</summary>
internal sealed record OverlapAnswer
{
    /// <summary>The view of lower power.</summary>
    public required ViewNameAnswer First { get; init; }

    /// <summary>The view of higher power.</summary>
    public required ViewNameAnswer Second { get; init; }

    /// <summary>The ratio of their powers, cut to the range; null for zooms.</summary>
    public required double? Ratio { get; init; }
}

/// <summary>The powers a telescope can use, and what sets each end.</summary>
internal sealed record PowerRangeAnswer
{
    /// <summary>The lowest power of use.</summary>
    public required double Lowest { get; init; }

    /// <summary>What sets it.</summary>
    public required RangeEnd LowestSetBy { get; init; }

    /// <summary>The highest power of use.</summary>
    public required double Highest { get; init; }

    /// <summary>What sets it.</summary>
    public required RangeEnd HighestSetBy { get; init; }
}

/// <summary>The finest detail an aperture shows.</summary>
internal sealed record ResolutionAnswer
{
    /// <summary>Rayleigh's limit, in arcseconds.</summary>
    public required double RayleighArcsec { get; init; }

    /// <summary>Dawes' limit, in arcseconds.</summary>
    public required double DawesArcsec { get; init; }
}

/// <summary>Something that had to fit into some view at once.</summary>
internal sealed record FramingAnswer
{
    /// <summary>What was to be framed, as the request names it.</summary>
    public required string? Name { get; init; }

    /// <summary>The least true field asked for, in degrees.</summary>
    public required double WidthDeg { get; init; }

    /// <summary>The name of the telescope it had to be in; null for any.</summary>
    public required string? Telescope { get; init; }

    /// <summary>Whether some usable view is wide enough.</summary>
    public required bool Met { get; init; }

    /// <summary>The widest true field of a usable view there, in degrees; null without any.</summary>
    public required double? TrueFieldDeg { get; init; }
}

/// <summary>Which catalogue an answer rests on.</summary>
internal sealed record CatalogueAnswer
{
    /// <summary>Null for a catalogue that the request brought along.</summary>
    public required string? Id { get; init; }

    /// <summary>A short hash of the content.</summary>
    public required string Version { get; init; }
}
