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
    /// <summary>What is spoken where nothing else is asked for, and what every other language is a translation of.</summary>
    private const string EnglishTag = "en";

    private static readonly Lazy<ImmutableArray<Language>> Spoken = new(() => Of([.. LanguageFile.ReadAll()]));

    /// <summary>The first is spoken where none is asked for.</summary>
    /// <exception cref="LanguageFileException">What is said in words cannot be used.</exception>
    public static ImmutableArray<Language> All => Spoken.Value;

    public static Language English => All[0];

    /// <summary>What the language is called in itself.</summary>
    public required string Name { get; init; }

    /// <summary>As in `Accept-Language` and `Content-Language` (RFC 5646).</summary>
    public required string Tag { get; init; }

    public required FrozenDictionary<string, string> Sentences { get; init; }

    /// <summary>Where the words come from.</summary>
    public required LanguageFile File { get; init; }

    public required NumberFormatInfo Numbers { get; init; }

    /// <summary>How a power is written, as a composite format.</summary>
    public required string Power { get; init; }

    /// <summary>How an amount is written, 1 being the currency.</summary>
    public required string Money { get; init; }

    /// <summary>How the diameter of a barrel is written.</summary>
    public required string Barrel { get; init; }

    /// <summary>What a telescope without a name of its own is called, by its place.</summary>
    public required string MadeUpTelescope { get; init; }

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

    /// <summary>The languages of files, English first.</summary>
    /// <exception cref="LanguageFileException">One of them does not say what English says.</exception>
    public static ImmutableArray<Language> Of(IReadOnlyList<LanguageFile> files)
    {
        var english = files.Single(file => file.Tag == EnglishTag);
        string[] faults = [.. files.SelectMany(file => LanguageCheck.FaultsOf(file, english))];
        return faults.Length > 0
            ? throw new LanguageFileException(faults)
            : [.. files.OrderBy(file => file.Tag != EnglishTag).ThenBy(file => file.Tag, StringComparer.Ordinal).Select(Of)];
    }

    private static Language Of(LanguageFile file)
    {
        var manner = file.TextsOf("language").ToDictionary(StringComparer.Ordinal);
        return new Language
        {
            Tag = file.Tag,
            File = file,
            Name = manner["name"],
            Sentences = file.TextsOf("sentences").ToFrozenDictionary(StringComparer.Ordinal),
            Numbers = Separators(manner["decimals"], manner["groups"]),
            Power = manner["power"].Replace("{number}", "{0}", StringComparison.Ordinal),
            Money = manner["money"].Replace("{amount}", "{0}", StringComparison.Ordinal).Replace("{currency}", "{1}", StringComparison.Ordinal),
            Barrel = manner["barrel"].Replace("{number}", "{0}", StringComparison.Ordinal),
            MadeUpTelescope = manner["madeUpTelescope"].Replace("{place}", "{0}", StringComparison.Ordinal),
            And = manner["and"],
            Or = manner["or"],
        };
    }

    private static NumberFormatInfo Separators(string decimals, string groups) => NumberFormatInfo.ReadOnly(new NumberFormatInfo
    {
        NumberDecimalSeparator = decimals,
        NumberGroupSeparator = groups,
    });
}
