using System.Globalization;
using System.Text;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>Draws tables of items: most are good, all are a little different from what one would write oneself.</summary>
internal sealed class CsvDraw(KnownIds known, Dice dice)
{
    private static readonly string[] Columns =
        [
            "id", "kind", "focalLengthMm", "apparentFieldDeg", "eyeReliefMm", "barrel", "price", "factors", "shortestFocalLengthMm", "longestFocalLengthMm",
            "massGrams", "inStock", "name", "line", "gtin", "colour"
        ];

    private static readonly string[] Odd =
        ["", " ", "x", "-1", "1e9", "1,200", "1.200,50", "NaN", "=1+1", "\"", "\"\"", "a\nb", "2 3", "2;3", "null", "ä½", "0", "EUR 12", "12 mm", "\0", "'"];

    /// <summary>A whole catalogue.</summary>
    public byte[] Catalogue() =>
        Table([.. Columns.Where(column => column is "id" or "kind" or "price" or "barrel" || dice.Chance(0.8))], dice.Int(0, 12), changes: false);

    /// <summary>A price feed.</summary>
    public byte[] Changes() =>
        Table([.. Columns.Where(column => column == "id" || (column is "price" or "inStock" or "name" && dice.Chance(0.7)))], dice.Int(0, 8), changes: true);

    private byte[] Table(string[] columns, int rows, bool changes)
    {
        var separator = dice.Pick(",", ",", ";", "\t");
        var end = dice.Pick("\n", "\n", "\r\n", "\r");
        var text = new StringBuilder(dice.Chance(0.1) ? "\uFEFF" : "").AppendJoin(separator, columns.Select(Header)).Append(end);
        for (var row = 0; row < rows; row++)
        {
            var kind = dice.Pick("eyepiece", "eyepiece", "eyepiece", "barlow", "zoom");
            text.AppendJoin(
                separator, columns.Select(column => Quoted(dice.Chance(0.01) ? dice.Pick(Odd) : Cell(column, kind, row, changes), separator))).Append(end);
        }

        var whole = dice.Chance(0.05) ? text.ToString()[..dice.Int(0, text.Length)] : text.ToString();
        return dice.Chance(0.05) ? Encoding.Latin1.GetBytes(whole) : Encoding.UTF8.GetBytes(whole);
    }

    private string Header(string column) => dice.Int(0, 19) switch
    {
        0 => column.ToUpperInvariant(),
        1 => $" {column} ",
        2 => $"\"{column}\"",
        3 => column + column,
        _ => column,
    };

    private string Quoted(string cell, string separator) =>
        cell.Contains(separator, StringComparison.Ordinal) || dice.Chance(0.1) ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;

    private string Cell(string column, string kind, int row, bool changes) => (column, kind) switch
    {
        ("id", _) => changes ? dice.Pick(known.ChangedItems) : FormattableString.Invariant($"row-{row}"),
        ("kind", _) => kind,
        ("price", _) => (dice.Int(0, 40_000) / 100m).ToString(CultureInfo.InvariantCulture),
        ("barrel", _) => dice.Pick("1.25in", "2in", "31.7", "1,25\""),
        ("inStock", _) => dice.Pick("true", "no", "1", "in stock", "https://schema.org/OutOfStock", ""),
        ("name" or "line" or "colour", _) => dice.Pick("", "plain", "Größe; 25", "a, b", "-1+1"),
        ("gtin", _) => dice.Pick("", "4006381333931"),
        ("massGrams", _) => dice.Pick("", "120", "120 g"),
        ("factors", "barlow") => dice.Pick("2", "2 3", "1.5 2.25"),
        ("focalLengthMm", "eyepiece") => dice.Int(2, 50).ToString(CultureInfo.InvariantCulture),
        ("apparentFieldDeg", "eyepiece") => dice.Pick("52", "68°", "82"),
        ("eyeReliefMm", not "barlow") => dice.Pick("12", "15 mm"),
        ("shortestFocalLengthMm", "zoom") => "8",
        ("longestFocalLengthMm", "zoom") => "24",
        _ => "",
    };
}
