using System.Text.Json.Serialization;
using Evenstep.Planning.Optics;

namespace Evenstep.Service.Catalogues.Content;

internal enum ItemKind
{
    Eyepiece,
    Zoom,
    Barlow,
}

/// <summary>An item as its JSON says it, whatever its kind; null for what is missing or faulty.</summary>
internal sealed record ItemRequest
{
    /// <summary>Null for an item that is only named by its id, and where it is missing or faulty.</summary>
    public required ItemKind? Kind { get; init; }

    /// <summary>Whether it is only named by its id; a text then stands for it.</summary>
    [JsonIgnore]
    public bool IsNamed { get; init; }

    public required string? Id { get; init; }

    public string? Name { get; init; }

    public string? Line { get; init; }

    public double? FocalLengthMm { get; init; }

    public double? ApparentFieldDeg { get; init; }

    public double? ShortestFocalLengthMm { get; init; }

    public double? LongestFocalLengthMm { get; init; }

    public double? ApparentFieldAtShortestDeg { get; init; }

    public double? ApparentFieldAtLongestDeg { get; init; }

    public double? EyeReliefMm { get; init; }

    public double? FieldStopMm { get; init; }

    public EyepiecePurpose? Purpose { get; init; }

    public double? FastestFocalRatio { get; init; }

    public IReadOnlyList<double?>? Factors { get; init; }

    public Barrel? Barrel { get; init; }

    public double? MassGrams { get; init; }

    public string? ParfocalGroup { get; init; }

    public decimal? Price { get; init; }

    public bool? InStock { get; init; }

    public string? Url { get; init; }

    public string? Sku { get; init; }

    public string? Gtin { get; init; }

    public IReadOnlyDictionary<string, string>? Attributes { get; init; }
}
