using Evenstep.Planning.Optics;
using Evenstep.Service.Answering.Targets;

namespace Evenstep.Service.Answering.Kits;

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

    /// <summary>The share of the useful powers near which nothing speaks against some view, in percent.</summary>
    public required double ComfortablePercent { get; init; }

    /// <summary>Every view the barrels allow, usable or not, by power.</summary>
    public required IReadOnlyList<ViewAnswer> Views { get; init; }

    /// <summary>The jumps between neighbouring usable views, those at both ends included.</summary>
    public required IReadOnlyList<StepAnswer> Steps { get; init; }

    /// <summary>Every pair of views that repeat one another, lower power first.</summary>
    public required IReadOnlyList<OverlapAnswer> Overlaps { get; init; }

    /// <summary>Which view is for what; null unless asked for.</summary>
    public required IReadOnlyList<TargetAnswer>? Targets { get; init; }
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

    /// <summary>What speaks against the view, usable or not.</summary>
    public required IReadOnlyList<Drawback> Drawbacks { get; init; }
}

/// <summary>What may speak against a view, in the order in which it is told.</summary>
internal enum Drawback
{
    SteepCone,
    TightEyeRelief,
    NarrowField,
    WideExitPupil,
}

/// <summary>A jump between neighbouring views, or between a view and an end of the power range.</summary>
internal sealed record StepAnswer
{
    /// <summary>The lower power, cut to the range.</summary>
    public required double From { get; init; }

    /// <summary>The higher power, cut to the range.</summary>
    public required double To { get; init; }

    /// <summary>The ratio of the powers as they are; its square at an end of the range.</summary>
    public required double Ratio { get; init; }

    /// <summary>The step as it counts, each zone of powers by its weight; a square too at an end of the range.</summary>
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
