using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Catalogues;

/// <summary>A catalogue understood: items of the trade, with the wire record of each for what is only given back.</summary>
internal sealed record Catalogue
{
    /// <summary>Null for an inline one.</summary>
    public required string? Id { get; init; }

    /// <summary>A short hash of the content: the same content has the same version. Null for an inline one.</summary>
    public required string? Version { get; init; }

    public required string Currency { get; init; }

    public required IReadOnlyDictionary<string, Item> Items { get; init; }

    /// <summary>The items as problems choose from them: made once.</summary>
    public Assortment Assortment => field ??= [.. Items.Values];

    /// <summary>Every item as its JSON says it, by id.</summary>
    public required IReadOnlyDictionary<string, ItemRequest> Listed { get; init; }

    public required IReadOnlyDictionary<string, CatalogueTelescope> Telescopes { get; init; }
}

/// <summary>A telescope that a shop lists.</summary>
internal sealed record CatalogueTelescope(string Id, Telescope Telescope, ImmutableArray<string> Included);
