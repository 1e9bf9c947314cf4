using System.Collections.Immutable;

namespace Evenstep.Service.Catalogues.Warnings;

/// <summary>The codes of what a catalogue is warned of.</summary>
internal static class WarningCode
{
    public const string UnknownColumn = "unknown-column";
    public const string FieldStopTooWide = "field-stop-wider-than-barrel";
    public const string FieldTooWide = "apparent-field-wider-than-barrel";
    public const string FieldContradicted = "field-stop-contradicts-apparent-field";
    public const string ZoomFieldsSwapped = "zoom-fields-swapped";
    public const string PriceOfZero = "price-of-zero";
    public const string AlikeItems = "alike-items";
    public const string SameGtin = "same-gtin";
    public const string UnknownCurrency = "unknown-currency";
    public const string TelescopeTooFast = "focal-ratio-too-fast";
    public const string FieldAssumed = "assumed-apparent-field";
    public const string EyeReliefAssumed = "assumed-eye-relief";

    public static readonly ImmutableArray<string> All =
    [
        UnknownColumn, FieldStopTooWide, FieldTooWide, FieldContradicted, ZoomFieldsSwapped, PriceOfZero, AlikeItems, SameGtin, UnknownCurrency,
        TelescopeTooFast, FieldAssumed, EyeReliefAssumed,
    ];
}
