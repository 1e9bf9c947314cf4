using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Routing;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>What to do about columns that are not known.</summary>
internal enum UnknownColumns
{
    /// <summary>Leave them out, and say so.</summary>
    Warn,

    /// <summary>Count them as faults.</summary>
    Refuse,
}

/// <summary>What the query says of a CSV in the body.</summary>
/// <param name="Currency">Of its prices; null if it is not said.</param>
/// <param name="RefuseUnknown">Whether a column that is not known is a fault.</param>
internal sealed record CsvQuery(string? Currency, bool RefuseUnknown)
{
    private static readonly Field CurrencyField = FieldTable<CatalogueRequest>.Of(nameof(CatalogueRequest.Currency)) with
    {
        Meaning = "With a CSV: the currency of its prices, by ISO 4217. It may be left out if the catalogue is stored already.",
    };

    private static readonly Field<UnknownColumns?> UnknownColumnsField = Make.Choice<UnknownColumns>(
        "unknownColumns", "With a CSV: `warn` of columns that are not known, and leave them out, or `refuse` them.").Defaulting("\"warn\"");

    /// <summary>What may be said of whole items.</summary>
    public static readonly QueryRule OfItems = new(CurrencyField, UnknownColumnsField);

    /// <summary>What may be said of changes, whose currency is the catalogue's.</summary>
    public static readonly QueryRule OfChanges = new(UnknownColumnsField);

    /// <summary>Reads the query; parameters that may not be given are faults. What the currency may be the catalogue's own table says.</summary>
    public static CsvQuery Read(IQueryCollection query, QueryRule known, Faults faults)
    {
        known.ReportUnknown(query, faults);
        return new CsvQuery(query[CurrencyField.Name], QueryRule.Read(UnknownColumnsField, query, faults) == UnknownColumns.Refuse);
    }

    /// <summary>Reports parameters that came with a body that is no CSV.</summary>
    public static void ReportStray(IQueryCollection query, QueryRule known, Faults faults)
    {
        known.ReportUnknown(query, faults);
        foreach (var field in known.Parameters.Where(field => query.ContainsKey(field.Name)))
        {
            faults.Add(
                RequestPointer.OfQuery(field.Name), FaultCode.UnknownField,
                () => $"{ErrorText.Quoted(field.Name)} goes with a body of text/csv only. Leave it out.");
        }
    }
}
