using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;

namespace Evenstep.Service.Answering.Kits;

/// <summary>What every request says of the observer's situation, understood. Complete only if no fault was found.</summary>
internal sealed record Setup
{
    /// <summary>In the request's order; null where a telescope is faulty.</summary>
    public required ImmutableArray<NamedTelescope?> Telescopes { get; init; }

    public required Observer Observer { get; init; }

    /// <summary>The width of a star's image that the air allows, in arcseconds.</summary>
    public required double SeeingArcsec { get; init; }

    public required ImmutableArray<Item> Owned { get; init; }

    public required Catalogue? Catalogue { get; init; }

    public ImmutableArray<TelescopeInUse> TelescopesInUse => [.. Telescopes.Select(telescope => telescope!.InUse!)];
}

/// <summary>A telescope of the request, by which it may be named in it.</summary>
/// <param name="Name">Given, the catalogue's, or made up from the place.</param>
/// <param name="Id">In the stored catalogue, or null.</param>
/// <param name="InUse">Null where it is faulty.</param>
internal sealed record NamedTelescope(string Name, string? Id, TelescopeInUse? InUse);
