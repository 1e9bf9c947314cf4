using Evenstep.Planning.Optics;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>The tables of fields of items, for sale and owned.</summary>
internal static class ItemFields
{
    public const int MostIdCharacters = 100;
    private const int MostUrlCharacters = 2000;
    private const int MostAttributes = 30;
    private const int MostFactors = 3;

    public static readonly Field<string?> Id = Make.Name("id", "Tells the item from all others.", MostIdCharacters);
    public static readonly Field<string?> Name = Make.Name("name", "What the shop calls it.");
    public static readonly Field<string?> Line = Make.Name("line", "The line it belongs to.");
    public static readonly Field<double?> FocalLengthMm = Make.Number("focalLengthMm", Bounds.EyepieceFocalLengthMm, "mm", "Focal length, in mm.");
    public static readonly Field<double?> ApparentFieldDeg = Make.Number("apparentFieldDeg", Bounds.ApparentFieldDeg, "degrees", "Apparent field, in degrees.");
    public static readonly Field<double?> ShortestFocalLengthMm = Make.Number("shortestFocalLengthMm", Bounds.EyepieceFocalLengthMm, "mm", "Shortest focal length, in mm: less than the longest.");
    public static readonly Field<double?> LongestFocalLengthMm = Make.Number("longestFocalLengthMm", Bounds.EyepieceFocalLengthMm, "mm", "Longest focal length, in mm.");
    public static readonly Field<double?> ApparentFieldAtShortestDeg = Make.Number("apparentFieldAtShortestDeg", Bounds.ApparentFieldDeg, "degrees", "Apparent field at the shortest focal length, in degrees.");
    public static readonly Field<double?> ApparentFieldAtLongestDeg = Make.Number("apparentFieldAtLongestDeg", Bounds.ApparentFieldDeg, "degrees", "Apparent field at the longest focal length, in degrees.");
    public static readonly Field<double?> EyeReliefMm = Make.Number("eyeReliefMm", Bounds.EyeReliefMm, "mm", "Eye relief, in mm.");
    public static readonly Field<double?> FieldStopMm = Make.Number("fieldStopMm", Bounds.FieldStopMm, "mm", "Diameter of the field stop, in mm; it gives the true field more exactly.");
    public static readonly Field<EyepiecePurpose?> Purpose = Make.Choice<EyepiecePurpose>("purpose", "What it is for; one with a reticle is not looked through for the view.").Defaulting("\"observing\"");
    public static readonly Field<double?> FastestFocalRatio = Make.Number("fastestFocalRatio", Bounds.FocalRatio, "", "The steepest light cone it is made for, as a focal ratio.");
    public static readonly Field<IReadOnlyList<double?>> Factors = Make.ListOf("factors", new NumberShape(Bounds.BarlowFactor, ""), 1, MostFactors, "The amplifications it offers, one at a time.", differ: true);
    public static readonly Field<Barrel?> Barrel = Make.Choice<Barrel>("barrel", "Diameter of the barrel, in inches.");
    public static readonly Field<double?> MassGrams = Make.Number("massGrams", Bounds.MassGrams, "g", "Mass, in grams.");
    public static readonly Field<string?> ParfocalGroup = Make.Name("parfocalGroup", "Items of one group come to focus together.");
    public static readonly Field<decimal?> Price = Make.Money("price", Bounds.Price, "Price, in the catalogue's currency.");
    public static readonly Field<bool?> InStock = Make.Flag("inStock", "Whether it can be bought now.").Defaulting("true");
    public static readonly Field<string?> Url = Make.Name("url", "Its page in the shop; given back.", MostUrlCharacters);
    public static readonly Field<string?> Sku = Make.Name("sku", "The shop's stock number; given back.");
    public static readonly Field<string?> Gtin = Make.Name("gtin", "Its global trade item number; given back.");
    private static readonly TextShape AttributeText = new(Make.MostNameCharacters, TextShape.AnyText, "none of them NUL", least: 0);

    public static readonly Field<IReadOnlyDictionary<string, string>> Attributes = Make.Of(
        "attributes",
        new TextMapShape(MostAttributes, Make.OneLine(Make.MostNameCharacters), AttributeText),
        "Texts of the shop's own, kept and given back.");

    /// <summary>What a shop knows of any item, beside its optics.</summary>
    private static readonly Field[] ShopFields = [Name, Line, ParfocalGroup, MassGrams, InStock, Url, Sku, Gtin, Attributes];

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
            values => new ItemRequest { Kind = null, IsNamed = true, Id = values.Of(Id) }));

    /// <summary>What is packed with a telescope: an item in full, or a catalogue's by its id.</summary>
    public static readonly TextOrFullShape<ItemRequest> Packed = new(
        Make.OneLine(MostIdCharacters),
        id => new ItemRequest { Kind = null, IsNamed = true, Id = id },
        Kinds("PackedItem", "packed with a telescope", [Id.Required(), Price]));

    /// <summary>What changes of an item, for the document: what comes of it is read as an item for sale.</summary>
    public static readonly ObjectShape<object> Changes = new(
        "ItemChanges",
        "The fields of an item that change; null takes one away. What comes of it must be a whole item again.",
        [
            Id, Make.Choice<ItemKind>(KindShape<ItemRequest>.Discriminator, "What it is."), Price, .. ((Field[])[FocalLengthMm, ApparentFieldDeg, ShortestFocalLengthMm, LongestFocalLengthMm,
                ApparentFieldAtShortestDeg, ApparentFieldAtLongestDeg, EyeReliefMm, FieldStopMm, Purpose, FastestFocalRatio, Factors, Barrel, .. ShopFields.Where(field => field != Attributes)])
                .Select(field => field.InChange()),
            Make.Of("attributes", new TextMapShape(MostAttributes, Make.OneLine(Make.MostNameCharacters), new ChangedTextShape(AttributeText)), "Texts of the shop's own that change; null takes one away."),
        ],
        values => values);

    private static Dictionary<ItemKind, string> Forms => new()
    {
        [ItemKind.Eyepiece] = "an eyepiece",
        [ItemKind.Zoom] = "a zoom",
        [ItemKind.Barlow] = "a Barlow",
    };

    private static KindShape<ItemRequest> Kinds(string name, string whose, Field[] leading, ObjectShape<ItemRequest>? reference = null)
    {
        (string Word, ObjectShape<ItemRequest> Shape)[] kinds =
        [
            Kind(ItemKind.Eyepiece, name, $"An eyepiece {whose}.", leading,
                [FocalLengthMm.Required(), ApparentFieldDeg.Required(), EyeReliefMm.Required(), Barrel.Required(), FieldStopMm, Purpose, FastestFocalRatio]),
            Kind(ItemKind.Zoom, name, $"A zoom {whose}: an eyepiece of variable focal length.", leading,
                [ShortestFocalLengthMm.Required(), LongestFocalLengthMm.Required(), ApparentFieldAtShortestDeg.Required(),
                    ApparentFieldAtLongestDeg.Required(), EyeReliefMm.Required(), Barrel.Required()]),
            Kind(ItemKind.Barlow, name, $"A Barlow {whose}: it multiplies the power of any eyepiece.", leading,
                [Factors.Required(), Barrel.Required()]),
        ];
        return new KindShape<ItemRequest>(name, kinds, OfAnyKind([.. kinds.Select(kind => kind.Shape)]), reference);
    }

    /// <summary>An item of which it is not known what it is: it has the fields of all kinds, and needs those that each of them needs.</summary>
    private static ObjectShape<ItemRequest> OfAnyKind(ObjectShape<ItemRequest>[] kinds)
    {
        // Of the kind itself all has been said.
        var whatever = Make.Of(KindShape<ItemRequest>.Discriminator, new WordShape(""), "What it is.");
        var others = kinds.SelectMany(kind => kind.Fields).Where(field => field.Name != whatever.Name).GroupBy(field => field.Name)
            .Select(field => field.Count(one => one.IsRequired) == kinds.Length ? field.First() : field.First().InChange());
        return new ObjectShape<ItemRequest>("ItemOfAnyKind", "An item.", [whatever, .. others], values => Build(null, values));
    }

    private static (string, ObjectShape<ItemRequest>) Kind(ItemKind kind, string ending, string meaning, Field[] leading, Field[] optics)
    {
        var word = Words<ItemKind>.Of(kind);
        var discriminator = Make.Of(KindShape<ItemRequest>.Discriminator, new WordShape(word), "What it is.").Required();
        var name = ending.Replace("Item", kind.ToString(), StringComparison.Ordinal);
        return (word, new ObjectShape<ItemRequest>(name, meaning, [discriminator, .. leading, .. optics, .. ShopFields], values => Build(kind, values), Forms[kind]));
    }

    private static ItemRequest Build(ItemKind? kind, Values values) => new()
    {
        Kind = kind,
        Id = values.Of(Id),
        Name = values.Of(Name),
        Line = values.Of(Line),
        FocalLengthMm = values.Of(FocalLengthMm),
        ApparentFieldDeg = values.Of(ApparentFieldDeg),
        ShortestFocalLengthMm = values.Of(ShortestFocalLengthMm),
        LongestFocalLengthMm = values.Of(LongestFocalLengthMm),
        ApparentFieldAtShortestDeg = values.Of(ApparentFieldAtShortestDeg),
        ApparentFieldAtLongestDeg = values.Of(ApparentFieldAtLongestDeg),
        EyeReliefMm = values.Of(EyeReliefMm),
        FieldStopMm = values.Of(FieldStopMm),
        Purpose = values.Of(Purpose),
        FastestFocalRatio = values.Of(FastestFocalRatio),
        Factors = values.Of(Factors),
        Barrel = values.Of(Barrel),
        MassGrams = values.Of(MassGrams),
        ParfocalGroup = values.Of(ParfocalGroup),
        Price = values.Of(Price),
        InStock = values.Of(InStock),
        Url = values.Of(Url),
        Sku = values.Of(Sku),
        Gtin = values.Of(Gtin),
        Attributes = values.Of(Attributes),
    };
}
