using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;

namespace Evenstep.Service.Contract.Languages;

/// <summary>
/// A language that the service speaks: its sentences, and how it writes numbers and quantities. The process itself knows no
/// cultures, so that nothing is ever formatted by accident.
/// </summary>
internal sealed class Language
{
    public static readonly Language English = new()
    {
        Tag = "en",
        Sentences = Together(Languages.English.Sentences, EnglishPictures.Sentences),
        Numbers = Separators(decimals: ".", groups: ","),
        Power = "{0}x",
        Money = "{1} {0}",
        Barrel = "{0}in",
        MadeUpTelescope = "telescope {0}",
        MadeUpOwned = "your item {0}",
        And = " and ",
        Or = " or ",
    };

    public static readonly Language German = new()
    {
        Tag = "de",
        Sentences = Together(Languages.German.Sentences, GermanPictures.Sentences),
        Numbers = Separators(decimals: ",", groups: "."),
        Power = "{0}-fach",
        Money = "{0} {1}",
        Barrel = "{0} Zoll",
        MadeUpTelescope = "Teleskop {0}",
        MadeUpOwned = "Nr. {0} Ihrer Ausrüstung",
        And = " und ",
        Or = " oder ",
    };

    /// <summary>The first is spoken where none is asked for.</summary>
    public static readonly ImmutableArray<Language> All = [English, German];

    /// <summary>As in `Accept-Language` and `Content-Language` (RFC 5646).</summary>
    public required string Tag { get; init; }

    public required FrozenDictionary<string, string> Sentences { get; init; }

    public required NumberFormatInfo Numbers { get; init; }

    /// <summary>How a power is written, as a composite format.</summary>
    public required string Power { get; init; }

    /// <summary>How an amount is written, 1 being the currency.</summary>
    public required string Money { get; init; }

    /// <summary>How the diameter of a barrel is written.</summary>
    public required string Barrel { get; init; }

    /// <summary>What a telescope without a name of its own is called, by its place.</summary>
    public required string MadeUpTelescope { get; init; }

    /// <summary>What an owned item without a name or an id of its own is called, by its place, after any preposition.</summary>
    public required string MadeUpOwned { get; init; }

    /// <summary>What stands before the last of several.</summary>
    public required string And { get; init; }

    /// <summary>What stands before the last of several of which one will do.</summary>
    public required string Or { get; init; }

    /// <summary>Several as prose lists them.</summary>
    /// <param name="parts">At least one.</param>
    /// <param name="either">Whether one of them will do.</param>
    public string List(IReadOnlyList<string> parts, bool either = false) => parts.Count < 2
        ? string.Concat(parts)
        : string.Join(", ", parts.SkipLast(1)) + (either ? Or : And) + parts[^1];

    private static FrozenDictionary<string, string> Together(params ReadOnlySpan<FrozenDictionary<string, string>> tables) =>
        tables.ToArray().SelectMany(table => table).ToFrozenDictionary(StringComparer.Ordinal);

    private static NumberFormatInfo Separators(string decimals, string groups) => NumberFormatInfo.ReadOnly(new NumberFormatInfo
    {
        NumberDecimalSeparator = decimals,
        NumberGroupSeparator = groups,
    });
}
