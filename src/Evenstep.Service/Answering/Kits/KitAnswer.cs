using Evenstep.Planning.Optics;

namespace Evenstep.Service.Answering.Kits;

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

    /// <summary>The share of the useful powers near which nothing speaks against some view, in percent.</summary>
    public required double ComfortablePercent { get; init; }
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

    /// <summary>A short hash of the content; null for a catalogue that the request brought along.</summary>
    public required string? Version { get; init; }
}
