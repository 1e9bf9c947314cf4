using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Http.Bodies;

/// <summary>Says why a text is not JSON.</summary>
internal static class NotJson
{
    private const int LongestShown = 40;

    /// <summary>Of what the parser says where there should be a value.</summary>
    private static readonly string[] OfValues = ["invalid JSON literal", "invalid start of a value"];

    private static readonly SearchValues<byte> BetweenWords = SearchValues.Create(" \t\r\n,:[]{}\""u8);

    /// <summary>What was found and what belongs there, as it reads after a colon.</summary>
    /// <param name="exception">What the parser says.</param>
    /// <param name="text">What it was given.</param>
    public static string ReasonOf(JsonException exception, ReadOnlySpan<byte> text)
    {
        if (!Utf8.IsValid(text))
        {
            return "it is not text in UTF-8.";
        }

        var start = text.Length - text.TrimStart(" \t\r\n"u8).Length;
        if (!IsStartOfValue(text[start..]))
        {
            return $"it begins with {WordAt(text, start)}. Send a JSON object, which stands in braces.";
        }

        // The parser takes any word for a misspelt "true", "false" or "null", and guesses which by its first letter.
        return IsCutOff(text) ? "it ends before it is complete. Something that was opened is not closed."
            : OfValues.Any(words => exception.Message.Contains(words, StringComparison.Ordinal))
                ? $"{WordAt(text, PlaceOf(exception, text))} was found. A value is a text in quotation marks, a number such as 0.5, true, false, null, " +
                  "a list or an object."
                : WordsOf(exception);
    }

    /// <summary>Whether all would be well if more came.</summary>
    private static bool IsCutOff(ReadOnlySpan<byte> text)
    {
        var reader = new Utf8JsonReader(text, isFinalBlock: false, default);
        try
        {
            while (reader.Read())
            {
            }

            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static bool IsStartOfValue(ReadOnlySpan<byte> text) => !text.IsEmpty
        && ("{[\"-0123456789"u8.Contains(text[0]) || text.StartsWith("true"u8) || text.StartsWith("false"u8) || text.StartsWith("null"u8));

    /// <summary>The parser's own words, without the place that it appends and what only its programmer can change.</summary>
    private static string WordsOf(JsonException exception)
    {
        var end = exception.Message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        var words = end < 0 ? exception.Message : exception.Message[..end];
        return words.Replace(" which is not supported in this mode. Change the reader options.", ".", StringComparison.Ordinal);
    }

    private static int PlaceOf(JsonException exception, ReadOnlySpan<byte> text)
    {
        var line = 0;
        for (var left = exception.LineNumber ?? 0; left > 0; left--)
        {
            line += text[line..].IndexOf((byte)'\n') + 1;
        }

        return (int)Math.Min(text.Length, line + (exception.BytePositionInLine ?? 0));
    }

    /// <summary>The word around a place, in quotation marks.</summary>
    private static string WordAt(ReadOnlySpan<byte> text, int place)
    {
        var start = text[..place].LastIndexOfAny(BetweenWords) + 1;
        var length = text[start..].IndexOfAny(BetweenWords);
        var word = text.Slice(start, Math.Min(LongestShown, length < 0 ? text.Length - start : Math.Max(length, 1)));
        return ErrorText.Quoted(Encoding.UTF8.GetString(word));
    }
}
