using Evenstep.Planning.Optics;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>A telescope in full, or by its id in a stored catalogue.</summary>
internal sealed record TelescopeRequest
{
    public string? Id { get; init; }

    public bool? WithIncluded { get; init; }

    public string? Name { get; init; }

    public double? ApertureMm { get; init; }

    public double? FocalLengthMm { get; init; }

    public Barrel? FocuserBarrel { get; init; }

    public PowerRangeRequest? PowerRange { get; init; }
}

internal sealed record PowerRangeRequest
{
    public required double? Lowest { get; init; }

    public required double? Highest { get; init; }
}
