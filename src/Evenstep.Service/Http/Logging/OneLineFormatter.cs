using System.Globalization;
using System.Text;
using Serilog.Events;
using Serilog.Formatting;
using Serilog.Formatting.Display;

namespace Evenstep.Service.Http.Logging;

/// <summary>
/// Writes each event as one line, and an exception as indented lines below it. Whatever a caller sent may be part of either:
/// of it, no line feed, no other control character and nothing that a terminal would obey is written as such, but as its
/// code point, <c>\u000A</c>. So no caller can make up a line, or hide one.
/// </summary>
internal sealed class OneLineFormatter : ITextFormatter
{
    private const string Indent = "   ";

    private static readonly MessageTemplateTextFormatter Head = new("[{Timestamp:HH:mm:ss} {Level:u3}] {Message:lj}", CultureInfo.InvariantCulture);

    public void Format(LogEvent logEvent, TextWriter output)
    {
        using var head = new StringWriter(CultureInfo.InvariantCulture);
        Head.Format(logEvent, head);
        output.WriteLine(Visible(head.ToString()));
        for (var (exception, label) = (logEvent.Exception, ""); exception is not null; (exception, label) = (exception.InnerException, "Caused by "))
        {
            output.WriteLine($"{Indent}{label}{exception.GetType().FullName}: {Visible(exception.Message)}");
            WriteStack(exception.StackTrace, output);
        }
    }

    /// <summary>A text in which every character that is not printed as itself is written as its code point.</summary>
    public static string Visible(string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange(' ', '~'))
        {
            return text;
        }

        var visible = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (IsPrinted(rune))
            {
                visible.Append(rune.ToString());
            }
            else
            {
                visible.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
            }
        }

        return visible.ToString();
    }

    /// <summary>The frames are the runtime's own words, one a line.</summary>
    private static void WriteStack(string? stack, TextWriter output)
    {
        foreach (var frame in (stack ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            output.WriteLine($"{Indent}{Indent}{Visible(frame)}");
        }
    }

    /// <summary>Format characters are none: some turn the direction of what follows.</summary>
    private static bool IsPrinted(Rune rune) => Rune.GetUnicodeCategory(rune) is not
        (UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Format
        or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned);
}
