using System.Text.Json.Serialization;
using Evenstep.Planning.Optics;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

internal enum ItemKind
{
    Eyepiece,
    Zoom,
    Barlow,
}

/// <summary>
/// An item as its JSON says it, whatever its kind; null for what is missing or faulty. Its canonical form has the fields in
/// this order.
/// </summary>
internal sealed record ItemRequest
{
    public const int MostIdCharacters = 100;
    private const int MostUrlCharacters = 2000;
    private const int MostAttributes = 30;
    private const int MostFactors = 3;

    /// <summary>Null for an item that is only named by its id, and where it is missing or faulty.</summary>
    [Choice<ItemKind>("What it is.")]
    public ItemKind? Kind { get; init; }

    /// <summary>Whether it is only named by its id; a text then stands for it.</summary>
    [JsonIgnore]
    public bool IsNamed { get; init; }

    [Text("Tells the item from all others.", Most = MostIdCharacters)] public string? Id { get; init; }
    [Text("What the shop calls it.")] public string? Name { get; init; }
    [Text("The line it belongs to.")] public string? Line { get; init; }
    [Number(nameof(Bounds.EyepieceFocalLengthMm), "mm", "Focal length, in mm.")] public double? FocalLengthMm { get; init; }

    [Number(nameof(Bounds.ApparentFieldDeg), "degrees", "Apparent field, in degrees; without it, what the field stop gives is assumed, else 50.")]
    public double? ApparentFieldDeg { get; init; }

    [Number(nameof(Bounds.EyepieceFocalLengthMm), "mm", "Shortest focal length, in mm: less than the longest.")]
    public double? ShortestFocalLengthMm { get; init; }

    [Number(nameof(Bounds.EyepieceFocalLengthMm), "mm", "Longest focal length, in mm.")] public double? LongestFocalLengthMm { get; init; }

    [Number(nameof(Bounds.ApparentFieldDeg), "degrees", "Apparent field at the shortest focal length, in degrees.")]
    public double? ApparentFieldAtShortestDeg { get; init; }

    [Number(nameof(Bounds.ApparentFieldDeg), "degrees", "Apparent field at the longest focal length, in degrees.")]
    public double? ApparentFieldAtLongestDeg { get; init; }

    [Number(nameof(Bounds.EyeReliefMm), "mm", "Eye relief, in mm; of an eyepiece without it 0.7 of the focal length is assumed, at most 20 mm.")]
    public double? EyeReliefMm { get; init; }

    [Number(nameof(Bounds.FieldStopMm), "mm", "Diameter of the field stop, in mm; it gives the true field more exactly.")]
    public double? FieldStopMm { get; init; }

    [Choice<EyepiecePurpose>("What it is for; one with a reticle is not looked through for the view.", Default = "\"observing\"")]
    public EyepiecePurpose? Purpose { get; init; }

    [Number(nameof(Bounds.FocalRatio), "", "The steepest light cone it is made for, as a focal ratio.")] public double? FastestFocalRatio { get; init; }

    [List(1, MostFactors, Differ = true)]
    [Number(nameof(Bounds.BarlowFactor), "", "The amplifications it offers, one at a time.")]
    public IReadOnlyList<double?>? Factors { get; init; }

    [Choice<Barrel>("Diameter of the barrel, in inches.")] public Barrel? Barrel { get; init; }
    [Number(nameof(Bounds.MassGrams), "g", "Mass, in grams.")] public double? MassGrams { get; init; }
    [Text("Items of one group come to focus together.")] public string? ParfocalGroup { get; init; }
    [Money(nameof(Bounds.Price), "Price, in the catalogue's currency.")] public decimal? Price { get; init; }
    [Flag("Whether it can be bought now.", Default = "true")] public bool? InStock { get; init; }
    [Text("Its page in the shop; given back.", Most = MostUrlCharacters)] public string? Url { get; init; }
    [Text("The shop's stock number; given back.")] public string? Sku { get; init; }
    [Text("Its global trade item number; given back.")] public string? Gtin { get; init; }
    [TextMap(MostAttributes, "Texts of the shop's own, kept and given back.")] public IReadOnlyDictionary<string, string>? Attributes { get; init; }
}
