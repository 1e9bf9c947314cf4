using System.Globalization;
using System.Text;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>
/// How wide a text is at most. The reader's device chooses the typeface, so each letter counts as wide as in the widest of
/// the usual sans-serif ones: a text may end sooner than reckoned, but never later.
/// </summary>
internal static class TextWidth
{
    private const string Slim = " ijlft'.,\u00A0";
    private const string Narrow = "rIJ!:;|()[]-/\\\"°²·";
    private const string Broad = "MOQ@&+<>=~#^w×";
    private const string Broadest = "Wm%ÆŒæœ—…";

    private const double BoldOverRegular = 1.2;
    private const double Widest = 2;

    /// <summary>By the last code point of each stretch of Unicode, in ems; letters of the alphabet are told apart above.</summary>
    private static readonly (int Last, double Ems)[] Stretches =
    [
        (0x017F, 0.85), (0x024F, 1.5), (0x036F, 1.0), (0x058F, 1.25), (0x05FF, 0.9), (0x07FF, 1.3), (0x1FFF, 2.0), (0x200A, 1.05),
        (0x206F, 1.8), (0x2BFF, 1.8), (0x2E7F, 2.0), (0xA4CF, 1.1), (0xABFF, 2.0), (0xD7FF, 1.1), (0xFAFF, 1.1), (0xFDF9, 3.0), (0xFDFF, 13.0),
        (0xFEFF, 1.3), (0xFFFF, 1.1), (0x11FFF, 2.5), (0x1254F, 7.0), (0x1CFFF, 2.5), (0x1EFFF, 2.5), (0x1FAFF, 1.75), (0x1FFFF, 2.0), (0x3FFFF, 1.1),
    ];

    /// <summary>Of the letters that most texts are made of.</summary>
    private static readonly double[] Common = [.. Enumerable.Range(0, 0x180).Select(code => OfLatin((char)code) ?? OfStretch(new Rune(code)))];

    /// <summary>In the picture's units.</summary>
    public static double Of(ReadOnlySpan<char> text, Face face)
    {
        var ems = 0.0;
        foreach (var rune in text.EnumerateRunes())
        {
            ems += rune.Value < Common.Length ? Common[rune.Value] : OfLatin(rune) ?? OfStretch(rune);
        }

        return ems * face.Size * (face.IsBold ? BoldOverRegular : 1);
    }

    private static double? OfLatin(Rune rune) => rune.IsBmp ? OfLatin((char)rune.Value) : null;

    private static double? OfLatin(char letter) =>
        Slim.Contains(letter, StringComparison.Ordinal) ? 0.4
        : Narrow.Contains(letter, StringComparison.Ordinal) ? 0.47
        : Broad.Contains(letter, StringComparison.Ordinal) ? 0.88
        : Broadest.Contains(letter, StringComparison.Ordinal) ? 1.09
        : char.IsAsciiLetterUpper(letter) ? 0.79
        : char.IsAscii(letter) || letter is 'ä' or 'ö' or 'ü' or 'ß' or '–' ? 0.67
        : null;

    private static double OfStretch(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.Format => 0,
        UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark => 0.67,
        _ => Array.Find(Stretches, stretch => rune.Value <= stretch.Last) is { Ems: > 0 } found ? found.Ems : Widest,
    };
}
