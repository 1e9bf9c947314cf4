namespace Evenstep.Service.Catalogues.Csv;

/// <summary>
/// Keeps a text from being run as a formula by the spreadsheet that opens it: an apostrophe before it, which makes it text
/// there. Reading takes off exactly what writing put on. An empty text gets one too, since an empty cell means no text.
/// </summary>
internal static class SpreadsheetText
{
    private const char Mark = '\'';

    /// <summary>What a formula may begin with, in half and in full width.</summary>
    private const string Beginnings = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    public static string Marked(string text) => NeedsMark(text) ? Mark + text : text;

    public static string Unmarked(string cell) => cell.StartsWith(Mark) && NeedsMark(cell[1..]) ? cell[1..] : cell;

    /// <summary>Also if marks stand before what would need one: otherwise such a text would lose one when it is read.</summary>
    private static bool NeedsMark(string text)
    {
        var bare = text.AsSpan().TrimStart(Mark);
        return bare.IsEmpty || Beginnings.Contains(bare[0], StringComparison.Ordinal);
    }
}
