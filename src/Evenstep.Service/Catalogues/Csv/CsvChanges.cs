using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>
/// Reads changes of items from a CSV: the `id` of an item and the columns that change. An empty cell leaves the item as it is,
/// for a feed leaves empty what its source does not know.
/// </summary>
internal static class CsvChanges
{
    /// <summary>The changes; what cannot be read is left out and reported by its line.</summary>
    public static IReadOnlyList<ItemChange> Read(ReadOnlyMemory<byte> bytes, IQueryCollection query, Faults faults, WarningList warnings)
    {
        var said = CsvQuery.Read(query, CsvQuery.OfChanges, faults);
        var rows = CsvItems.Read(bytes, CsvPurpose.Changes, said.RefuseUnknown, faults, warnings);
        return [.. rows.Rows.Zip(rows.Lines, (row, line) => ItemChange.Naming(row, CsvTable.PointerOf(line)))];
    }
}
