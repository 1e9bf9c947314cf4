using Evenstep.Planning.Optics;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>
/// A telescope as its JSON says it: in full, by its id in a stored catalogue, or as a catalogue lists it; null for what is
/// missing or faulty. Its canonical form has the fields in this order.
/// </summary>
internal sealed record TelescopeRequest
{
    private const int MostIncluded = 20;

    [Text("The telescope's id in the stored catalogue.", Most = ItemRequest.MostIdCharacters)] public string? Id { get; init; }
    [Flag("Whether the items packed with it count as owned.", Default = "true")] public bool? WithIncluded { get; init; }
    [Text("What to call it; without one, `telescope 1` by its place.")] public string? Name { get; init; }
    [Number(nameof(Bounds.ApertureMm), "mm", "Aperture, in mm.")] public double? ApertureMm { get; init; }
    [Number(nameof(Bounds.TelescopeFocalLengthMm), "mm", "Focal length, in mm.")] public double? FocalLengthMm { get; init; }
    [Choice<Barrel>("The barrel that the focuser takes, in inches.")] public Barrel? FocuserBarrel { get; init; }
    [Part<PowerRangeRequest>("Overrides either end of the power range.")] public PowerRangeRequest? PowerRange { get; init; }

    /// <summary>Items in full, or by the ids of items of the catalogue.</summary>
    [List(0, MostIncluded)]
    [Shaped(
        typeof(ItemShapes),
        nameof(ItemShapes.Packed),
        "What is packed with it: ids of items of the catalogue, or items in full that are not for sale alone, which need an `id`.",
        Default = "[]")]
    public IReadOnlyList<ItemRequest?>? Included { get; init; }
}

[Schema("PowerRangeWish", "Overrides either end of the power range that pupil, focuser, aperture and seeing set.")]
internal sealed record PowerRangeRequest
{
    [Number(nameof(Bounds.Power), "", "The lowest power of use.")] public double? Lowest { get; init; }
    [Number(nameof(Bounds.Power), "", "The highest power of use: at least 1.5 times the lowest.")] public double? Highest { get; init; }
}
