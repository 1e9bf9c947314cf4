using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>
/// A catalogue understood: items of the trade, with the wire record of each for what is only given back. There is one such
/// object for each version of a stored catalogue, and it never changes.
/// </summary>
internal sealed record Catalogue
{
    /// <summary>Null for an inline one.</summary>
    public required string? Id { get; init; }

    /// <summary>A short hash of the content: the same content has the same version. Null for an inline one.</summary>
    public required string? Version { get; init; }

    /// <summary>The content in its canonical form, as it is stored and given back. Empty for an inline one.</summary>
    public ReadOnlyMemory<byte> Content { get; init; }

    /// <summary>As its JSON says it.</summary>
    public required CatalogueRequest Request { get; init; }

    public required string Currency { get; init; }

    public required IReadOnlyDictionary<string, Item> Items { get; init; }

    /// <summary>The items as problems choose from them: made once.</summary>
    public Assortment Assortment => field ??= [.. Items.Values];

    /// <summary>Every item as its JSON says it, by id.</summary>
    public required IReadOnlyDictionary<string, ItemRequest> Listed { get; init; }

    public required IReadOnlyDictionary<string, CatalogueTelescope> Telescopes { get; init; }

    /// <summary>What is packed with a telescope without being for sale alone, by id.</summary>
    public required IReadOnlyDictionary<string, Item> Packed { get; init; }

    /// <summary>Whether an id means something here: an item for sale, or one packed with a telescope.</summary>
    public bool Knows(string itemId) => Listed.ContainsKey(itemId) || Packed.ContainsKey(itemId);

    /// <summary>An item that somebody may own: one for sale, or one packed with a telescope.</summary>
    public Item? Find(string itemId) => Items.GetValueOrDefault(itemId) ?? Packed.GetValueOrDefault(itemId);
}

/// <summary>A telescope that a shop lists, and the ids of what is packed with it.</summary>
internal sealed record CatalogueTelescope(string Id, Telescope Telescope, ImmutableArray<string> Included);
