using System.Text.Json;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>Writes a row as the JSON object it stands for. Empty cells are left out, and so are columns that are not known.</summary>
internal static class CsvRowWriter
{
    public static void Write(Utf8JsonWriter json, CsvRow row, CsvHeader header)
    {
        var filled = header.Columns.Zip(row.Cells).Where(pair => pair.Second.Length > 0).DistinctBy(pair => pair.First.Name).ToList();
        json.WriteStartObject();
        foreach (var (column, cell) in filled.Where(pair => pair.First.Field is not null))
        {
            json.WritePropertyName(column.Name);
            CsvCell.WriteJson(json, column.Field!.AnyShape, cell);
        }

        WriteAttributes(json, [.. filled.Where(pair => pair.First.Attribute is not null)]);
        json.WriteEndObject();
    }

    private static void WriteAttributes(Utf8JsonWriter json, (CsvColumn Column, string Cell)[] attributes)
    {
        if (attributes.Length == 0)
        {
            return;
        }

        json.WriteStartObject(FieldName.Of(nameof(ItemRequest.Attributes)));
        foreach (var (column, cell) in attributes)
        {
            json.WriteString(column.Attribute!, SpreadsheetText.Unmarked(cell));
        }

        json.WriteEndObject();
    }
}
