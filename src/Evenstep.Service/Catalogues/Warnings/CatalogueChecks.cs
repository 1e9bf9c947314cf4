using Evenstep.Planning.Advice;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Warnings;

/// <summary>
/// Looks a catalogue over for data that can hardly be right. Only where the trade leaves no doubt: a shop that is warned
/// for nothing stops reading.
/// </summary>
internal static class CatalogueChecks
{
    private const double FastestTelescope = 2;

    /// <summary>Looks over a catalogue without faults.</summary>
    /// <param name="catalogue">As its JSON says it.</param>
    /// <param name="root">Its top, for the places.</param>
    /// <param name="warnings">Takes the warnings.</param>
    public static void Check(CatalogueRequest catalogue, RequestPointer root, WarningList warnings)
    {
        CheckCurrency(catalogue.Currency, root, warnings);
        CheckItems([.. (catalogue.Items ?? []).OfType<ItemRequest>()], root.To(nameof(CatalogueRequest.Items)), warnings);
        foreach (var (i, telescope) in (catalogue.Telescopes ?? []).Index())
        {
            CheckTelescope(telescope, root.To(nameof(CatalogueRequest.Telescopes)).At(i), warnings);
        }
    }

    private static void CheckCurrency(string? currency, RequestPointer root, WarningList warnings)
    {
        if (currency is not null && !Currencies.Known.Contains(currency))
        {
            warnings.Add(root.To(nameof(CatalogueRequest.Currency)), new Remark(WarningCode.UnknownCurrency, [RemarkValue.Of("currency", currency)]));
        }
    }

    private static void CheckItems(ItemRequest[] items, RequestPointer pointer, WarningList warnings)
    {
        var (seen, gtins) = (new Dictionary<ItemRequest, string>(ItemLikeness.ButForTheId), new Dictionary<string, string>(StringComparer.Ordinal));
        foreach (var (i, item) in items.Index())
        {
            var at = pointer.At(i);
            ItemChecks.Check(item, at, warnings);
            if (!seen.TryAdd(item, item.Id!))
            {
                warnings.Add(at, new Remark(WarningCode.AlikeItems, [RemarkValue.Of("other", seen[item])]));
            }
            else if (item.Gtin is { } gtin && !gtins.TryAdd(gtin, item.Id!))
            {
                warnings.Add(at.To(nameof(ItemRequest.Gtin)), new Remark(WarningCode.SameGtin, [RemarkValue.Of("other", gtins[gtin])]));
            }
        }
    }

    private static void CheckTelescope(TelescopeRequest? telescope, RequestPointer pointer, WarningList warnings)
    {
        if (telescope is { ApertureMm: { } aperture, FocalLengthMm: { } focalLength } && focalLength < FastestTelescope * aperture)
        {
            warnings.Add(pointer.At("focalLengthMm"), new Remark(WarningCode.TelescopeTooFast, []));
        }

        foreach (var (i, packed) in (telescope?.Included ?? []).Index())
        {
            if (packed is { IsNamed: false })
            {
                ItemChecks.CheckAssumed(packed, pointer.To(nameof(TelescopeRequest.Included)).At(i), warnings);
            }
        }
    }
}
