using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>A catalogue as its JSON says it: a stored one's id, or all of it.</summary>
internal sealed record CatalogueRequest
{
    private const int MostTelescopes = 500;

    [Shaped(typeof(CatalogueTexts), nameof(CatalogueTexts.Id), "The id of a stored catalogue; `demo` is always there.")]
    public string? Id { get; init; }

    [Shaped(typeof(CatalogueTexts), nameof(CatalogueTexts.Currency), "The currency of all money, by ISO 4217.")]
    public string? Currency { get; init; }

    [List(0, PurchaseProblem.MostCatalogueItems)]
    [Shaped(typeof(ItemShapes), nameof(ItemShapes.ForSale), "What the shop sells.")]
    public IReadOnlyList<ItemRequest?>? Items { get; init; }

    /// <summary>Of a stored catalogue only.</summary>
    [List(0, MostTelescopes)]
    [Shaped(typeof(TelescopeShapes), nameof(TelescopeShapes.Listed), "The telescopes that the shop sells.", Default = "[]")]
    public IReadOnlyList<TelescopeRequest?>? Telescopes { get; init; }
}

/// <summary>What the texts of a catalogue may be.</summary>
internal static class CatalogueTexts
{
    /// <summary>Lower-case letters, digits and hyphens.</summary>
    public static readonly TextShape Id = new(63, "^[a-z0-9][a-z0-9-]{0,62}$", "of lower-case letters, digits and hyphens, a hyphen not first");

    public static readonly TextShape Currency = new(3, "^[A-Z]{3}$", "three capital letters as in ISO 4217, such as EUR");
}

/// <summary>Which fields of a catalogue go together.</summary>
internal static class CatalogueShapes
{
    private static readonly Field Id = FieldTable<CatalogueRequest>.Of(nameof(CatalogueRequest.Id));
    private static readonly Field[] InFull = [.. FieldTable<CatalogueRequest>.Required(nameof(CatalogueRequest.Currency), nameof(CatalogueRequest.Items))];

    /// <summary>A catalogue in a request: by id, or inline.</summary>
    public static readonly ReferenceOrFullShape<CatalogueRequest> InRequest = new(
        "Catalogue",
        new ObjectShape<CatalogueRequest>("CatalogueById", "A stored catalogue.", [Id.Required()], "one by `id`"),
        Id.Name,
        new ObjectShape<CatalogueRequest>(
            "InlineCatalogue",
            "A catalogue that the request brings along.",
            [.. InFull, Make.Absent(Id.Name, "Only of a stored catalogue.")],
            "a catalogue given inline"));

    /// <summary>A catalogue to be stored.</summary>
    public static readonly ObjectShape<CatalogueRequest> Stored = new(
        "StoredCatalogue", "A catalogue with the telescopes it goes with.", [.. InFull, FieldTable<CatalogueRequest>.Of(nameof(CatalogueRequest.Telescopes))]);
}
