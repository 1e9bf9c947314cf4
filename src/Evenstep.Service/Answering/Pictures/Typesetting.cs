using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>Makes texts fit: names from outside are made harmless, long ones cut, sentences broken into lines.</summary>
internal static class Typesetting
{
    public const string Ellipsis = "…";

    private const string Unknown = "\uFFFD";
    private const string Isolated = "\u2068";
    private const string IsolatedEnd = "\u2069";

    /// <summary>More would reach out of their line.</summary>
    private const int MostMarksOnALetter = 2;

    /// <summary>A text that XML can hold: what it knows no character for is marked as unknown.</summary>
    public static string Valid(string text) =>
        IsValid(text) ? text : string.Concat(text.EnumerateRunes().Select(rune => IsValid(rune) ? rune.ToString() : Unknown));

    /// <summary>
    /// A name from outside as one line that XML can hold. Whatever would turn the direction of writing around it is dropped,
    /// and so are marks piled upon one letter.
    /// </summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        var marks = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            marks = IsMark(rune) ? marks + 1 : 0;
            if (marks <= MostMarksOnALetter && !TurnsDirection(rune))
            {
                Append(clean, rune);
            }
        }

        return clean.ToString().Trim() is { Length: > 0 } some ? some : Ellipsis;
    }

    /// <summary>A name from outside as a part of a sentence: one written from right to left leaves the rest in its order.</summary>
    public static string Quoted(string name)
    {
        var clean = Clean(name);
        return clean.EnumerateRunes().Any(IsRightToLeft) ? Isolated + clean + IsolatedEnd : clean;
    }

    /// <summary>The text, or as much of its beginning as fits, with an ellipsis.</summary>
    public static string Cut(string text, Face face, double width)
    {
        if (TextWidth.Of(text, face) <= width)
        {
            return text;
        }

        var kept = new StringBuilder();
        var left = width - TextWidth.Of(Ellipsis, face);
        foreach (var element in ElementsOf(text))
        {
            left -= TextWidth.Of(element, face);
            if (left < 0)
            {
                break;
            }

            kept.Append(element);
        }

        return kept.ToString().TrimEnd() + Ellipsis;
    }

    /// <summary>The text in lines that fit, broken at spaces; what is left after the last line allowed is cut.</summary>
    public static ImmutableArray<string> Break(string text, Face face, double width, int mostLines = int.MaxValue)
    {
        if (TextWidth.Of(text, face) <= width)
        {
            return [text];
        }

        var lines = ImmutableArray.CreateBuilder<string>();
        var words = new Queue<string>(text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        while (words.Count > 0)
        {
            var line = lines.Count == mostLines - 1 ? string.Join(' ', words) : NextLine(words, face, width);
            lines.Add(Cut(line, face, width));
            if (lines.Count == mostLines)
            {
                break;
            }
        }

        return lines.ToImmutable();
    }

    /// <summary>Takes the words that fit; one word in any case.</summary>
    private static string NextLine(Queue<string> words, Face face, double width)
    {
        List<string> line = [words.Dequeue()];
        var used = TextWidth.Of(line[0], face);
        while (words.TryPeek(out var next))
        {
            used += TextWidth.Of(" ", face) + TextWidth.Of(next, face);
            if (used > width)
            {
                break;
            }

            line.Add(words.Dequeue());
        }

        return string.Join(' ', line);
    }

    /// <summary>What the reader takes for one letter, so that none is cut in half.</summary>
    private static IEnumerable<string> ElementsOf(string text)
    {
        var elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext())
        {
            yield return elements.GetTextElement();
        }
    }

    private static void Append(StringBuilder clean, Rune rune)
    {
        if (Rune.IsControl(rune) || Rune.IsWhiteSpace(rune))
        {
            clean.Append(clean.Length > 0 && clean[^1] != ' ' ? " " : "");
        }
        else
        {
            clean.Append(IsValid(rune) ? rune.ToString() : Unknown);
        }
    }

    private static bool IsValid(string text) => text.All(XmlConvert.IsXmlChar);

    private static bool IsValid(Rune rune) => !rune.IsBmp || XmlConvert.IsXmlChar((char)rune.Value);

    private static bool IsMark(Rune rune) => Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark;

    private static bool TurnsDirection(Rune rune) => rune.Value is 0x061C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069);

    private static bool IsRightToLeft(Rune rune) =>
        rune.Value is (>= 0x0590 and <= 0x08FF) or (>= 0xFB1D and <= 0xFDFF) or (>= 0xFE70 and <= 0xFEFC) or (>= 0x10800 and <= 0x10FFF)
            or (>= 0x1E800 and <= 0x1EFFF);
}
