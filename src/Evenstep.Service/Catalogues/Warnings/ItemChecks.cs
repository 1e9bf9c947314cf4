using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Warnings;

/// <summary>What one item can be warned of by itself. Each check is silent about an item that lacks what it looks at.</summary>
internal static class ItemChecks
{
    /// <summary>
    /// How far a field stop and an apparent field may be apart before one of them must be wrong. Distortion alone makes
    /// several percent; see <see cref="ImpliedField"/>.
    /// </summary>
    private const double Leeway = 0.15;

    public static void Check(ItemRequest item, RequestPointer pointer, WarningList warnings)
    {
        CheckPrice(item, pointer, warnings);
        CheckFieldStop(item, pointer, warnings);
        CheckContradiction(item, pointer, warnings);
        CheckField(item.FocalLengthMm, item.ApparentFieldDeg, item, pointer.To(nameof(ItemRequest.ApparentFieldDeg)), warnings);
        CheckField(item.LongestFocalLengthMm, item.ApparentFieldAtLongestDeg, item, pointer.To(nameof(ItemRequest.ApparentFieldAtLongestDeg)), warnings);
        CheckZoom(item, pointer, warnings);
        CheckAssumed(item, pointer, warnings);
    }

    private static void CheckPrice(ItemRequest item, RequestPointer pointer, WarningList warnings)
    {
        if (item.Price == 0)
        {
            warnings.Add(pointer.To(nameof(ItemRequest.Price)), new Remark(WarningCode.PriceOfZero, []));
        }
    }

    private static void CheckFieldStop(ItemRequest item, RequestPointer pointer, WarningList warnings)
    {
        if (item is { FieldStopMm: { } stop, Barrel: { } barrel } && stop > barrel.WidestFieldStopMm() + BarrelLimits.GraceMm)
        {
            warnings.Add(pointer.To(nameof(ItemRequest.FieldStopMm)), new Remark(WarningCode.FieldStopTooWide,
                [RemarkValue.Millimetres("fieldStopMm", stop), RemarkValue.Millimetres("mostMm", barrel.WidestFieldStopMm()), BarrelOf(barrel)]));
        }
    }

    private static void CheckContradiction(ItemRequest item, RequestPointer pointer, WarningList warnings)
    {
        if (item is not { FieldStopMm: { } stop, FocalLengthMm: { } focalLength, ApparentFieldDeg: { } field })
        {
            return;
        }

        var implied = ImpliedField.Nearest(stop, focalLength, field);
        if (Math.Abs((field / implied) - 1) > Leeway)
        {
            warnings.Add(pointer.To(nameof(ItemRequest.FieldStopMm)), new Remark(WarningCode.FieldContradicted,
                [RemarkValue.Millimetres("fieldStopMm", stop), RemarkValue.Degrees("impliedDeg", implied), RemarkValue.Degrees("apparentFieldDeg", field)]));
        }
    }

    /// <summary>Without a field stop, what the apparent field needs of the barrel.</summary>
    private static void CheckField(double? focalLengthMm, double? fieldDeg, ItemRequest item, RequestPointer pointer, WarningList warnings)
    {
        if (item is not { FieldStopMm: null, Barrel: { } barrel } || focalLengthMm is not { } focalLength || fieldDeg is not { } field)
        {
            return;
        }

        var needed = ImpliedField.NarrowestStopMm(focalLength, field);
        var most = barrel.WidestFieldStopMm();
        if (needed > (most + BarrelLimits.GraceMm) * (1 + Leeway))
        {
            warnings.Add(pointer, new Remark(WarningCode.FieldTooWide,
            [
                RemarkValue.Degrees("apparentFieldDeg", field), RemarkValue.Millimetres("focalLengthMm", focalLength),
                RemarkValue.Millimetres("neededMm", needed), RemarkValue.Millimetres("mostMm", most), BarrelOf(barrel),
            ]));
        }
    }

    private static void CheckZoom(ItemRequest item, RequestPointer pointer, WarningList warnings)
    {
        if (item is { ApparentFieldAtShortestDeg: { } atShortest, ApparentFieldAtLongestDeg: { } atLongest } && atLongest > atShortest)
        {
            warnings.Add(pointer.To(nameof(ItemRequest.ApparentFieldAtLongestDeg)), new Remark(WarningCode.ZoomFieldsSwapped, []));
        }
    }

    /// <summary>What an eyepiece does not say decides as if it were known, also where it is packed with a telescope.</summary>
    public static void CheckAssumed(ItemRequest item, RequestPointer pointer, WarningList warnings)
    {
        if (item is not { Kind: ItemKind.Eyepiece, FocalLengthMm: { } focalLength })
        {
            return;
        }

        if (item.ApparentFieldDeg is null)
        {
            warnings.Add(pointer.To(nameof(ItemRequest.ApparentFieldDeg)), new Remark(WarningCode.FieldAssumed,
                [RemarkValue.Degrees("apparentFieldDeg", AssumedFigures.ApparentFieldDeg(focalLength, item.FieldStopMm))]));
        }

        if (item.EyeReliefMm is null)
        {
            warnings.Add(pointer.To(nameof(ItemRequest.EyeReliefMm)), new Remark(WarningCode.EyeReliefAssumed,
                [RemarkValue.Millimetres("eyeReliefMm", AssumedFigures.EyeReliefMm(focalLength))]));
        }
    }

    private static RemarkValue BarrelOf(Barrel barrel) => RemarkValue.Of("barrel", Words<Barrel>.Of(barrel));
}
