using System.Buffers;
using System.Globalization;
using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>
/// The rows of a CSV as the JSON they stand for, to be read by the same tables of fields as any other JSON, with the places
/// to report faults at. Nothing of it may be used while there are faults.
/// </summary>
internal sealed class CsvItems
{
    private CsvItems(IReadOnlyList<JsonElement> rows, IReadOnlyList<int> lines, Faults faults, WarningList warnings)
    {
        Rows = rows;
        Lines = lines;
        Faults = faults;
        Warnings = warnings;
    }

    /// <summary>Each an object with the fields whose cells are not empty.</summary>
    public IReadOnlyList<JsonElement> Rows { get; }

    /// <summary>The line that each row begins on.</summary>
    public IReadOnlyList<int> Lines { get; }

    /// <summary>What is wrong with the CSV itself. Whoever reads the rows adds to it.</summary>
    public Faults Faults { get; }

    public WarningList Warnings { get; }

    /// <summary>Stands for the top of a catalogue whose items are these rows, and names each by its line.</summary>
    public RequestPointer Root => new CsvRoot(Lines);

    /// <summary>The rows as the items of a catalogue, as its JSON would be.</summary>
    /// <param name="currency">Null if it is not known, which the reader of the catalogue reports.</param>
    /// <param name="telescopes">Those of the catalogue that the rows come into; null for none.</param>
    public JsonElement InCatalogue(string? currency, JsonElement? telescopes)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartObject();
            if (currency is not null)
            {
                json.WriteString(FieldName.Of(nameof(CatalogueRequest.Currency)), currency);
            }

            WriteList(json, FieldName.Of(nameof(CatalogueRequest.Items)), Rows);
            if (telescopes is { ValueKind: JsonValueKind.Array } list)
            {
                WriteList(json, FieldName.Of(nameof(CatalogueRequest.Telescopes)), list.EnumerateArray());
            }

            json.WriteEndObject();
        }

        return JsonElement.Parse(bytes.WrittenSpan);
    }

    /// <summary>Reads bytes of any kind; whatever is wrong with them is among the faults.</summary>
    /// <param name="bytes">As received.</param>
    /// <param name="purpose">What the rows are.</param>
    /// <param name="refuseUnknown">Whether a column that is not known is a fault.</param>
    /// <param name="faults">Where they are reported.</param>
    /// <param name="warnings">Where columns that are not known are reported otherwise.</param>
    public static CsvItems Read(ReadOnlyMemory<byte> bytes, CsvPurpose purpose, bool refuseUnknown, Faults faults, WarningList warnings)
    {
        var table = CsvTable.Read(CsvText.Checked(bytes, faults), PurchaseProblem.MostCatalogueItems, faults);
        if (table.Header is null)
        {
            ReportEmpty(faults);
            return new CsvItems([], [], faults, warnings);
        }

        var header = CsvHeader.Read(table.Header, refuseUnknown, faults, warnings);
        var rows = table.Rows.Where(row => Fits(row, header, faults)).ToList();
        CsvRequirements.ReportMissing(header, rows, purpose, faults);
        return new CsvItems(JsonOf(rows, header), [.. rows.Select(row => row.Line)], faults, warnings);
    }

    private static void ReportEmpty(Faults faults)
    {
        if (!faults.Any)
        {
            faults.Add(
                CsvTable.PointerOf(1), FaultCode.Missing,
                () => "The body is empty; send a CSV that begins with a row of the names of its columns, such as `id,kind,price`.");
        }
    }

    private static bool Fits(CsvRow row, CsvHeader header, Faults faults)
    {
        var (given, wanted) = (row.Cells.Length, header.Columns.Count);
        if (given != wanted)
        {
            faults.Add(CsvTable.PointerOf(row.Line), given < wanted ? FaultCode.TooFew : FaultCode.TooMany, () => string.Create(
                CultureInfo.InvariantCulture,
                $"This row has {given} cells, and the header {wanted}. A cell that contains the separator stands in quotation marks; " +
                $"numbers have a decimal point, not a comma."));
        }

        return given == wanted;
    }

    private static void WriteList(Utf8JsonWriter json, string name, IEnumerable<JsonElement> elements)
    {
        json.WriteStartArray(name);
        foreach (var element in elements)
        {
            element.WriteTo(json);
        }

        json.WriteEndArray();
    }

    private static List<JsonElement> JsonOf(List<CsvRow> rows, CsvHeader header)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartArray();
            rows.ForEach(row => CsvRowWriter.Write(json, row, header));
            json.WriteEndArray();
        }

        return [.. JsonElement.Parse(bytes.WrittenSpan).EnumerateArray()];
    }
}
