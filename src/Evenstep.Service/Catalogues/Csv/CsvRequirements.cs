using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>Which columns a CSV must have; each that it lacks is reported once, at the header.</summary>
internal static class CsvRequirements
{
    public static void ReportMissing(CsvHeader header, IReadOnlyList<CsvRow> rows, CsvPurpose purpose, Faults faults)
    {
        var required = purpose == CsvPurpose.Changes ? [FieldTable<ItemRequest>.Of(nameof(ItemRequest.Id))] : OfItems(KindsIn(header, rows));
        foreach (var field in required.Where(field => !header.Has(field.Name)))
        {
            faults.AddMissingEverywhere(
                header.Pointer.At(field.Name),
                () => $"There is no column `{field.Name}`; in each row it must be {field.AnyShape.Allowed.In(Language.English)}.{Who(field)}");
        }

        if (purpose == CsvPurpose.Changes)
        {
            ReportNoChange(header, faults);
        }
    }

    /// <summary>A misspelt header must not look like a day without news.</summary>
    private static void ReportNoChange(CsvHeader header, Faults faults)
    {
        if (!faults.Any && !header.Columns.Any(column => column.IsKnown && column.Name != FieldName.Of(nameof(ItemRequest.Id))))
        {
            faults.Add(header.Pointer, FaultCode.Missing, () =>
                $"No column beside `{FieldName.Of(nameof(ItemRequest.Id))}` is known, so that nothing would change. " +
                $"Known are {ErrorText.List(CsvColumns.Fields.Select(field => field.Name))}.");
        }
    }

    /// <summary>What every kind needs, and what those kinds need that are there.</summary>
    private static IEnumerable<Field> OfItems(HashSet<string> kinds)
    {
        var shapes = ItemShapes.ForSale.Kinds.Where(pair => kinds.Contains(pair.Key)).Select(pair => pair.Value);
        return CsvColumns.Fields.Where(CsvColumns.IsRequiredOfAll)
            .Concat(shapes.SelectMany(shape => shape.Fields.Where(field => field.IsRequired)))
            .DistinctBy(field => field.Name);
    }

    private static HashSet<string> KindsIn(CsvHeader header, IReadOnlyList<CsvRow> rows)
    {
        var column = header.Columns.Index().FirstOrDefault(one => one.Item.Name == KindShape<ItemRequest>.Discriminator, (-1, null!)).Index;
        return column < 0 ? [] : [.. rows.Select(row => row.Cells[column])];
    }

    private static string Who(Field field) =>
        CsvColumns.IsRequiredOfAll(field) || field.Name == FieldName.Of(nameof(ItemRequest.Id))
            ? ""
            : $" It is needed for {string.Join(" and ", WhoNeeds(field))}.";

    private static IEnumerable<string> WhoNeeds(Field field) =>
        ItemShapes.ForSale.Kinds.Values.Where(kind => kind.Fields.Any(one => one.IsRequired && one.Name == field.Name)).Select(kind => kind.Form);
}
