using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>A catalogue as its JSON says it: a stored one's id, or all of it.</summary>
internal sealed record CatalogueRequest
{
    public string? Id { get; init; }

    public string? Currency { get; init; }

    public IReadOnlyList<ItemRequest?>? Items { get; init; }

    /// <summary>Of a stored catalogue only.</summary>
    public IReadOnlyList<CatalogueTelescopeRequest?>? Telescopes { get; init; }
}

/// <summary>A telescope that a shop lists, with the items packed with it.</summary>
internal sealed record CatalogueTelescopeRequest
{
    public required string? Id { get; init; }

    public required string? Name { get; init; }

    public required double? ApertureMm { get; init; }

    public required double? FocalLengthMm { get; init; }

    public required Barrel? FocuserBarrel { get; init; }

    /// <summary>Items in full, or by the ids of items of the catalogue.</summary>
    public required IReadOnlyList<ItemRequest?>? Included { get; init; }
}

/// <summary>The tables of fields of catalogues.</summary>
internal static class CatalogueFields
{
    private const int MostTelescopes = 500;
    private const int MostIncluded = 20;

    /// <summary>Lower-case letters, digits and hyphens.</summary>
    public static readonly TextShape CatalogueId = new(63, "^[a-z0-9][a-z0-9-]{0,62}$", "of lower-case letters, digits and hyphens, a hyphen not first");

    public static readonly Field<string?> Id = Make.Of("id", CatalogueId, "The id of a stored catalogue; `demo` is always there.");
    public static readonly Field<string?> Currency = Make.Of("currency", new TextShape(3, "^[A-Z]{3}$", "three capital letters as in ISO 4217, such as EUR"), "The currency of all money, by ISO 4217.");
    public static readonly Field<IReadOnlyList<ItemRequest?>> Items = Make.ListOf("items", ItemFields.ForSale, 0, PurchaseProblem.MostCatalogueItems, "What the shop sells.");

    public static readonly Field<IReadOnlyList<ItemRequest?>> Included = Make.ListOf(
        "included", ItemFields.Packed, 0, MostIncluded, "What is packed with it: ids of items of the catalogue, or items in full that are not for sale alone, which need an `id`.").Defaulting("[]");

    public static readonly Field<IReadOnlyList<CatalogueTelescopeRequest?>> Telescopes = Make.ListOf(
        "telescopes",
        new ObjectShape<CatalogueTelescopeRequest>(
            "CatalogueTelescope",
            "A telescope that the shop sells.",
            [TelescopeFields.Id.Required(), TelescopeFields.Name, TelescopeFields.ApertureMm.Required(), TelescopeFields.FocalLengthMm.Required(), TelescopeFields.FocuserBarrel.Required(), Included],
            values => new CatalogueTelescopeRequest
            {
                Id = values.Of(TelescopeFields.Id),
                Name = values.Of(TelescopeFields.Name),
                ApertureMm = values.Of(TelescopeFields.ApertureMm),
                FocalLengthMm = values.Of(TelescopeFields.FocalLengthMm),
                FocuserBarrel = values.Of(TelescopeFields.FocuserBarrel),
                Included = values.Of(Included),
            }),
        0,
        MostTelescopes,
        "The telescopes that the shop sells.").Defaulting("[]");

    /// <summary>A catalogue in a request: by id, or inline.</summary>
    public static readonly ReferenceOrFullShape<CatalogueRequest> InRequest = new(
        "Catalogue",
        new ObjectShape<CatalogueRequest>("CatalogueById", "A stored catalogue.", [Id.Required()], Build, "one by `id`"),
        Id.Name,
        new ObjectShape<CatalogueRequest>(
            "InlineCatalogue",
            "A catalogue that the request brings along.",
            [Currency.Required(), Items.Required(), Make.Absent(Id.Name, "Only of a stored catalogue.")],
            Build,
            "a catalogue given inline"));

    /// <summary>A catalogue to be stored.</summary>
    public static readonly ObjectShape<CatalogueRequest> Stored = new(
        "StoredCatalogue", "A catalogue with the telescopes it goes with.", [Currency.Required(), Items.Required(), Telescopes], Build);

    private static CatalogueRequest Build(Values values) => new()
    {
        Id = values.Of(Id),
        Currency = values.Of(Currency),
        Items = values.Of(Items),
        Telescopes = values.Of(Telescopes),
    };
}
