using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Csv;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Bodies;

namespace Evenstep.Service.Catalogues;

/// <summary>Reads changes of items from lines of JSON: an object a line, with the `id` of the item and the fields that change.</summary>
internal static class NdjsonChanges
{
    /// <summary>The changes; what cannot be read is left out and reported by its line.</summary>
    public static IReadOnlyList<ItemChange> Read(ReadOnlyMemory<byte> bytes, IQueryCollection query, Faults faults)
    {
        CsvQuery.ReportStray(query, CsvQuery.OfChanges, faults);
        List<ItemChange> changes = [];
        var (left, line) = (StrictJson.WithoutMark(bytes), 0);
        while (!left.IsEmpty)
        {
            var end = left.Span.IndexOf((byte)'\n');
            var text = end < 0 ? left : left[..end];
            left = end < 0 ? default : left[(end + 1)..];
            line++;
            if (changes.Count == PurchaseProblem.MostCatalogueItems)
            {
                ReportTooMany(line, faults);
                break;
            }

            ReadLine(text, line, changes, faults);
        }

        if (changes.Count == 0 && !faults.Any)
        {
            faults.Add(
                CsvTable.PointerOf(1), FaultCode.Missing,
                () => "The body is empty; send a line such as {\"id\": \"…\", \"price\": 10} for each item that changes.");
        }

        return changes;
    }

    private static void ReadLine(ReadOnlyMemory<byte> text, int line, List<ItemChange> changes, Faults faults)
    {
        if (text.Span.Trim(" \t\r"u8).IsEmpty)
        {
            return;
        }

        var at = CsvTable.PointerOf(line);
        try
        {
            changes.Add(ItemChange.Naming(StrictJson.ParseLine(text.Span), at));
        }
        catch (JsonException exception)
        {
            faults.Add(
                at, FaultCode.NotJson,
                () => FormattableString.Invariant(
                    $"Line {line} is not JSON: {NotJson.ReasonOf(exception, text.Span)} Every line must be a JSON object of its own."));
        }
    }

    private static void ReportTooMany(int line, Faults faults) => faults.Add(CsvTable.PointerOf(line), FaultCode.TooMany, () => FormattableString.Invariant(
        $"This is one line more than the {PurchaseProblem.MostCatalogueItems} items that a catalogue can have; send an item once."));
}
