using System.Globalization;
using CsvHelper;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>A CSV taken apart, before anything in it is understood.</summary>
/// <param name="Header">Null for an empty one.</param>
/// <param name="Rows">All below the header that are not blank, down to the first beyond the limit.</param>
internal sealed record CsvTable(CsvRow? Header, IReadOnlyList<CsvRow> Rows)
{
    private static readonly char[] Separators = [',', ';'];

    /// <summary>Reads the bytes; what of their quoting is wrong is reported.</summary>
    /// <param name="bytes">UTF-8.</param>
    /// <param name="mostRows">The most rows below the header.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public static CsvTable Read(ReadOnlyMemory<byte> bytes, int mostRows, Faults faults)
    {
        var separator = Separators.MaxBy(one => KnownColumns(bytes, one));
        var rows = RowsOf(bytes, separator, record => Report(record, faults)).Where(row => !row.IsBlank).Take(mostRows + 2).ToList();
        if (rows.Count > mostRows + 1)
        {
            faults.Add(PointerOf(rows[^1].Line), FaultCode.TooMany, () => string.Create(
                CultureInfo.InvariantCulture, $"From here on there are more than {mostRows} rows, the most that are taken. Leave rows out."));
            rows.RemoveAt(rows.Count - 1);
        }

        return new CsvTable(rows.FirstOrDefault(), rows[Math.Min(1, rows.Count)..]);
    }

    public static RequestPointer PointerOf(int line) => RequestPointer.Root.At("line").At(line);

    /// <summary>The right separator is the one that gives a header with more names that mean something.</summary>
    private static int KnownColumns(ReadOnlyMemory<byte> bytes, char separator) =>
        RowsOf(bytes, separator, null).FirstOrDefault(row => !row.IsBlank)?.Cells.Count(CsvColumns.Knows) ?? 0;

    private static IEnumerable<CsvRow> RowsOf(ReadOnlyMemory<byte> bytes, char separator, Action<CsvMalformedRecord>? report)
    {
        using var reader = CsvReader.Create(bytes, new CsvReaderOptions
        {
            Separator = separator,
            HasHeader = false,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            OnMalformedRecord = report,
        });
        while (reader.Read())
        {
            yield return new CsvRow((int)reader.LineNumber, [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        }
    }

    /// <summary>A quotation mark within a cell that does not begin with one is text, as in 1.25".</summary>
    private static void Report(CsvMalformedRecord record, Faults faults)
    {
        var message = record.Reason switch
        {
            CsvMalformedReason.StrayQuote => null,
            CsvMalformedReason.UnterminatedQuote =>
                "A quotation mark opens a cell in this row, and none closes it. Close it; a quotation mark within such a cell is written twice.",
            _ => "Text follows a quotation mark that closes a cell. Put the whole cell in quotation marks; a quotation mark within it is written twice.",
        };
        if (message is not null)
        {
            faults.Add(PointerOf((int)record.LineNumber), FaultCode.InvalidText, () => message);
        }
    }
}
