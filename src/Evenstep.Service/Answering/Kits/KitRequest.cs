using Evenstep.Planning.Optics;
using Evenstep.Service.Catalogues.Content;

namespace Evenstep.Service.Answering.Kits;

/// <summary>What every request says of the observer's situation; null for what is missing or faulty.</summary>
internal sealed record KitRequest
{
    public required IReadOnlyList<TelescopeRequest?>? Telescopes { get; init; }

    public required ObserverRequest? Observer { get; init; }

    public required SiteRequest? Site { get; init; }

    public required IReadOnlyList<ItemRequest?>? Owned { get; init; }

    public required CatalogueRequest? Catalogue { get; init; }
}

internal sealed record ObserverRequest
{
    public required double? Age { get; init; }

    public required double? PupilMm { get; init; }

    public required bool? WearsSpectacles { get; init; }

    public required double? AstigmatismDioptres { get; init; }

    public required double? LeastEyeReliefMm { get; init; }

    public required IReadOnlyList<Interest?>? Observes { get; init; }
}

internal sealed record SiteRequest
{
    public required double? SeeingArcsec { get; init; }
}

/// <summary>What must fit into some view at once.</summary>
internal sealed record FramingRequest
{
    public required string? Name { get; init; }

    public required double? WidthDeg { get; init; }

    public required string? Telescope { get; init; }
}
