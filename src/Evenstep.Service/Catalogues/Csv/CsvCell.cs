using System.Text.Json;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>
/// A cell and the JSON value it stands for. What is no number where a number belongs becomes a text, so that the field's
/// own shape refuses it in its own words.
/// </summary>
internal static class CsvCell
{
    private const char ListSeparator = ' ';

    public static void WriteJson(Utf8JsonWriter json, Shape shape, string cell)
    {
        switch (shape)
        {
            case NumberShape or MoneyShape:
                WriteNumber(json, cell.Trim());
                break;
            case FlagShape:
                WriteFlag(json, cell.Trim());
                break;
            case ListShape<double?>:
                WriteNumbers(json, cell);
                break;
            default:
                json.WriteStringValue(SpreadsheetText.Unmarked(cell));
                break;
        }
    }

    /// <summary>The cell for a value; empty for null.</summary>
    public static string Of(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Null or JsonValueKind.Undefined => "",
        JsonValueKind.String => SpreadsheetText.Marked(value.GetString()!),
        JsonValueKind.Array => string.Join(ListSeparator, value.EnumerateArray().Select(one => one.GetRawText())),
        _ => value.GetRawText(),
    };

    private static void WriteNumber(Utf8JsonWriter json, string cell)
    {
        if (TextAsJson.IsNumber(cell))
        {
            json.WriteRawValue(cell);
        }
        else
        {
            json.WriteStringValue(cell);
        }
    }

    private static void WriteNumbers(Utf8JsonWriter json, string cell)
    {
        json.WriteStartArray();
        foreach (var one in cell.Split(ListSeparator, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            WriteNumber(json, one);
        }

        json.WriteEndArray();
    }

    /// <summary>Spreadsheets write TRUE and FALSE.</summary>
    private static void WriteFlag(Utf8JsonWriter json, string cell)
    {
        if (bool.TryParse(cell, out var flag))
        {
            json.WriteBooleanValue(flag);
        }
        else
        {
            json.WriteStringValue(cell);
        }
    }
}
