using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>Makes an item of the trade of an item as its JSON says it.</summary>
internal static class ItemReader
{
    /// <summary>The item, or null where something it needs is missing or faulty (all of it reported).</summary>
    public static Item? Read(ItemRequest item, string? id, RequestPointer pointer, Faults faults, bool isOwn = false) =>
        OpticOf(item, pointer, faults) is { } optic && id is not null ? new Item(id, optic)
        {
            Name = item.Name,
            IsOwn = isOwn,
            Price = item.Price ?? 0,
            MassGrams = item.MassGrams,
            ParfocalGroup = item.ParfocalGroup,
            InStock = item.InStock ?? true,
        }
        : null;

    private static Optic? OpticOf(ItemRequest item, RequestPointer pointer, Faults faults) => item.Kind switch
    {
        ItemKind.Eyepiece => EyepieceOf(item),
        ItemKind.Zoom => ZoomOf(item, pointer, faults),
        ItemKind.Barlow => BarlowOf(item),
        _ => null,
    };

    private static Eyepiece? EyepieceOf(ItemRequest item) =>
        item is { FocalLengthMm: { } mm, Barrel: { } barrel }
            ? Eyepiece.Of(mm, item.ApparentFieldDeg, item.EyeReliefMm, item.FieldStopMm, barrel) with
            {
                Purpose = item.Purpose ?? EyepiecePurpose.Observing,
                FastestFocalRatio = item.FastestFocalRatio,
            }
            : null;

    private static Zoom? ZoomOf(ItemRequest item, RequestPointer pointer, Faults faults)
    {
        if (item is not { ShortestFocalLengthMm: { } shortest, LongestFocalLengthMm: { } longest })
        {
            return null;
        }

        if (shortest >= longest)
        {
            faults.Add(
                pointer.To(nameof(ItemRequest.ShortestFocalLengthMm)),
                FaultCode.EmptyRange,
                () => ErrorMessage.Of("error/zoom-range", ("shortest", shortest), ("longest", longest)));
            return null;
        }

        return item is { ApparentFieldAtShortestDeg: { } atShortest, ApparentFieldAtLongestDeg: { } atLongest, EyeReliefMm: { } relief, Barrel: { } barrel }
            ? new Zoom(shortest, longest, atShortest, atLongest, relief, barrel) { FastestFocalRatio = item.FastestFocalRatio }
            : null;
    }

    private static Barlow? BarlowOf(ItemRequest item)
    {
        if (item is not { Factors: { Count: > 0 and <= 3 } factors, Barrel: { } barrel } || factors.Contains(null))
        {
            return null;
        }

        ImmutableArray<double> distinct = [.. factors.OfType<double>().Distinct()];
        return new Barlow(distinct, barrel) { FastestFocalRatio = item.FastestFocalRatio };
    }
}
