using System.Text.Json;
using CsvHelper;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>
/// Writes items as a CSV: a column for every field and every attribute that any of them has, separated by commas, in UTF-8.
/// Reading it gives the same items again.
/// </summary>
internal static class CsvExport
{
    private static readonly CsvWriterOptions Options = new() { Quoting = CsvQuoting.WhenNeededOrWhitespace };

    /// <summary>Writes the items of a list; each must be valid.</summary>
    public static void Write(Stream to, IReadOnlyCollection<JsonElement> items)
    {
        using var csv = CsvWriter.Create(to, Options, leaveOpen: true);
        List<string> fields =
            [.. CsvColumns.Fields.Where(field => CsvColumns.IsRequiredOfAll(field) || items.Any(item => Has(item, field.Name))).Select(field => field.Name)];
        List<string> attributes = [.. items.SelectMany(AttributesOf).Select(attribute => attribute.Name).Distinct().Order(StringComparer.Ordinal)];
        csv.WriteRecord([.. fields, .. attributes.Select(name => CsvColumns.AttributeBeginning + name)]);
        foreach (var item in items)
        {
            csv.WriteRecord([.. fields.Select(name => CellOf(item, name)), .. attributes.Select(name => AttributeCellOf(item, name))]);
        }
    }

    private static bool Has(JsonElement item, string name) => ErrorText.Find(item, name) is { ValueKind: not JsonValueKind.Null };

    private static string CellOf(JsonElement item, string name) => ErrorText.Find(item, name) is { } value ? CsvCell.Of(value) : "";

    private static string AttributeCellOf(JsonElement item, string name) =>
        ErrorText.Find(item, FieldName.Of(nameof(ItemRequest.Attributes))) is { ValueKind: JsonValueKind.Object } attributes ? CellOf(attributes, name) : "";

    private static IEnumerable<JsonProperty> AttributesOf(JsonElement item) =>
        ErrorText.Find(item, FieldName.Of(nameof(ItemRequest.Attributes))) is { ValueKind: JsonValueKind.Object } attributes
            ? attributes.EnumerateObject()
            : [];
}
