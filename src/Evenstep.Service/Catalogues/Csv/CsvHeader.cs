using System.Globalization;
using Evenstep.Planning.Advice;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>The header row, understood.</summary>
/// <param name="Pointer">Where it stands.</param>
/// <param name="Columns">In their order.</param>
internal sealed record CsvHeader(RequestPointer Pointer, IReadOnlyList<CsvColumn> Columns)
{
    /// <summary>Reads the header. A column that is not known is reported: to the faults if it is refused, else to the warnings.</summary>
    public static CsvHeader Read(CsvRow row, bool refuseUnknown, Faults faults, WarningList warnings)
    {
        var header = new CsvHeader(CsvTable.PointerOf(row.Line), [.. row.Cells.Select(CsvColumn.Of)]);
        header.ReportRepetitions(faults);
        foreach (var (i, column) in header.Columns.Index().Where(one => !one.Item.IsKnown))
        {
            header.ReportUnknown(column.Name, i + 1, refuseUnknown, faults, warnings);
        }

        return header;
    }

    public bool Has(string name) => Columns.Any(column => column.Name == name);

    private void ReportRepetitions(Faults faults)
    {
        var columns = Columns.Where(column => column.IsKnown).GroupBy(column => column.Name, StringComparer.Ordinal);
        foreach (var column in columns.Where(group => group.Skip(1).Any()))
        {
            faults.Add(Pointer.At(column.Key), FaultCode.Duplicate, () => string.Create(
                CultureInfo.InvariantCulture, $"`{column.Key}` heads {column.Count()} columns; leave all but one out."));
        }
    }

    private void ReportUnknown(string name, int number, bool refuse, Faults faults, WarningList warnings)
    {
        var nearest = NearestName.To(name, CsvColumns.Fields.Select(field => field.Name));
        if (refuse)
        {
            faults.Add(Pointer.At(name), FaultCode.UnknownField, () => Refusal(name, number, nearest));
        }
        else
        {
            warnings.Add(Pointer.At(name), Warning(name, number, nearest), name.Length == 0 ? "nameless" : nearest is null ? null : "nearest");
        }
    }

    private static string Refusal(string name, int number, string? nearest) => name.Length == 0
        ? string.Create(CultureInfo.InvariantCulture, $"Column {number} has no name. Name it, or leave it out.")
        : nearest is not null
        ? $"{ErrorText.Quoted(name)} is no column here. Did you mean `{nearest}`?"
        : $"{ErrorText.Quoted(name)} is no column here. Leave it out, or call it `{CsvColumns.AttributeBeginning}` and a name, to keep it as it is. " +
          $"Known are {ErrorText.List(CsvColumns.Fields.Select(field => field.Name))}.";

    private static Remark Warning(string name, int number, string? nearest)
    {
        RemarkValue[] values = name.Length == 0
            ? [RemarkValue.Of("number", number)]
            : [RemarkValue.Of("column", ErrorText.Shortened(name)), .. nearest is null ? Array.Empty<RemarkValue>() : [RemarkValue.Of("nearest", nearest)]];
        return new Remark(WarningCode.UnknownColumn, [.. values]);
    }
}
