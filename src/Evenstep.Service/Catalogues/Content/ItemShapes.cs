using Evenstep.Service.Contract.Fields;
using static Evenstep.Service.Contract.Fields.FieldTable<Evenstep.Service.Catalogues.Content.ItemRequest>;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>Which fields of an item go together: by its kind, and by whose it is.</summary>
internal static class ItemShapes
{
    private static readonly Field Id = Of(nameof(ItemRequest.Id));
    private static readonly Field Price = Of(nameof(ItemRequest.Price));
    private static readonly Field<ItemKind?> KindField = (Field<ItemKind?>)Of(nameof(ItemRequest.Kind));

    private static readonly Field<IReadOnlyDictionary<string, string>> Attributes =
        (Field<IReadOnlyDictionary<string, string>>)Of(nameof(ItemRequest.Attributes));

    private static readonly KindOfItem[] KindsOfItem =
    [
        new(ItemKind.Eyepiece, "an eyepiece", "An eyepiece {0}.")
        {
            Required = [nameof(ItemRequest.FocalLengthMm), nameof(ItemRequest.Barrel)],
            Optional =
            [
                nameof(ItemRequest.ApparentFieldDeg), nameof(ItemRequest.EyeReliefMm), nameof(ItemRequest.FieldStopMm), nameof(ItemRequest.Purpose),
                nameof(ItemRequest.FastestFocalRatio),
            ],
        },
        new(ItemKind.Zoom, "a zoom", "A zoom {0}: an eyepiece of variable focal length.")
        {
            Required =
            [
                nameof(ItemRequest.ShortestFocalLengthMm), nameof(ItemRequest.LongestFocalLengthMm), nameof(ItemRequest.ApparentFieldAtShortestDeg),
                nameof(ItemRequest.ApparentFieldAtLongestDeg), nameof(ItemRequest.EyeReliefMm), nameof(ItemRequest.Barrel),
            ],
            Optional = [nameof(ItemRequest.FastestFocalRatio)],
        },
        new(ItemKind.Barlow, "a Barlow", "A Barlow {0}: it multiplies the power of any eyepiece.")
        {
            Required = [nameof(ItemRequest.Factors), nameof(ItemRequest.Barrel)],
            Optional = [nameof(ItemRequest.FastestFocalRatio)],
        },
    ];

    /// <summary>What makes an item what it is, in the order of the record.</summary>
    private static readonly Field[] Optics = [.. Rows.Where(row => KindsOfItem.Any(kind => kind.Has(row.Property))).Select(row => row.Field)];

    /// <summary>What a shop knows of any item: whatever is neither optics nor of an own place.</summary>
    private static readonly Field[] OfShop =
    [
        .. All(nameof(ItemRequest.Name), nameof(ItemRequest.Line), nameof(ItemRequest.ParfocalGroup))
            .Union(Rows.Select(row => row.Field).Except([KindField, Id, Price, .. Optics])),
    ];

    /// <summary>An item of a catalogue: it has an id and a price.</summary>
    public static readonly KindShape<ItemRequest> ForSale = Kinds("Item", "for sale", [Id.Required(), Price.Required()]);

    /// <summary>An owned item: in full, or a catalogue's by its id.</summary>
    public static readonly KindShape<ItemRequest> Owned = Kinds(
        "OwnedItem",
        "that the observer owns",
        [Id, Price],
        new ObjectShape<ItemRequest>(
            "OwnedItemById",
            "An item of the catalogue that the observer owns.",
            [Id.Required(), Make.Absent(KindShape<ItemRequest>.Discriminator, "Only of an item given in full.")],
            begin: () => new ItemRequest { IsNamed = true }));

    /// <summary>What is packed with a telescope: an item in full, or a catalogue's by its id.</summary>
    public static readonly TextOrFullShape<ItemRequest> Packed = new(
        Make.OneLine(ItemRequest.MostIdCharacters),
        id => new ItemRequest { IsNamed = true, Id = id },
        Kinds("PackedItem", "packed with a telescope", [Id.Required(), Price]));

    /// <summary>What changes of an item, for the document: what comes of it is read as an item for sale.</summary>
    public static readonly ObjectShape<ItemRequest> Changes = new(
        "ItemChanges",
        "The fields of an item that change; null takes one away. What comes of it must be a whole item again.",
        [
            Id, KindField, Price, .. Optics.Concat(OfShop.Where(field => field != Attributes)).Select(field => field.InChange()),
            Attributes with { Shape = ((TextMapShape)Attributes.Shape).InChange(), Meaning = "Texts of the shop's own that change; null takes one away." },
        ]);

    private static KindShape<ItemRequest> Kinds(string name, string whose, Field[] leading, ObjectShape<ItemRequest>? reference = null)
    {
        (string Word, ObjectShape<ItemRequest> Shape)[] kinds =
            [.. KindsOfItem.Select(kind => (Words<ItemKind>.Of(kind.Kind), ShapeOf(kind, name, whose, leading)))];
        return new KindShape<ItemRequest>(name, kinds, OfAnyKind([.. kinds.Select(kind => kind.Shape)]), reference);
    }

    private static ObjectShape<ItemRequest> ShapeOf(KindOfItem kind, string ending, string whose, Field[] leading) => new(
        ending.Replace("Item", kind.Kind.ToString(), StringComparison.Ordinal),
        kind.Meaning.Replace("{0}", whose, StringComparison.Ordinal),
        [(KindField with { Shape = new WordShape<ItemKind>(kind.Kind) }).Required(), .. leading, .. Required(kind.Required), .. All(kind.Optional), .. OfShop],
        kind.Form);

    /// <summary>An item of which it is not known what it is: it has the fields of all kinds, and needs those that each of them needs.</summary>
    private static ObjectShape<ItemRequest> OfAnyKind(ObjectShape<ItemRequest>[] kinds)
    {
        // Of the kind itself all has been said.
        var whatever = KindField with { Shape = new WordShape<ItemKind>(null) };
        var others = kinds.SelectMany(kind => kind.Fields).Where(field => field.Name != whatever.Name).GroupBy(field => field.Name)
            .Select(field => field.Count(one => one.IsRequired) == kinds.Length ? field.First() : field.First().InChange());
        return new ObjectShape<ItemRequest>("ItemOfAnyKind", "An item.", [whatever, .. others]);
    }

    /// <summary>A kind of item, with the fields that not every kind has, or that only this kind needs.</summary>
    /// <param name="Kind">The kind.</param>
    /// <param name="Form">What to call an item of it.</param>
    /// <param name="Meaning">What it is, for the document, with a place for whose it is.</param>
    private sealed record KindOfItem(ItemKind Kind, string Form, string Meaning)
    {
        public required string[] Required { get; init; }

        public string[] Optional { get; init; } = [];

        public bool Has(string property) => Required.Contains(property) || Optional.Contains(property);
    }
}
