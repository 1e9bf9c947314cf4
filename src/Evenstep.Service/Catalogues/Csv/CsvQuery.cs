using Evenstep.Service.Reading;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>What the query says of a CSV in the body.</summary>
/// <param name="Currency">Of its prices; null if it is not said.</param>
/// <param name="RefuseUnknown">Whether a column that is not known is a fault.</param>
internal sealed record CsvQuery(string? Currency, bool RefuseUnknown)
{
    private const string UnknownColumns = "unknownColumns";
    private const string Warn = "warn";
    private const string Refuse = "refuse";

    private static readonly string CurrencyName = CatalogueFields.Currency.Name;

    /// <summary>What may be said of whole items.</summary>
    public static readonly IReadOnlyList<string> OfItems = [CurrencyName, UnknownColumns];

    /// <summary>What may be said of changes, whose currency is the catalogue's.</summary>
    public static readonly IReadOnlyList<string> OfChanges = [UnknownColumns];

    /// <summary>Reads the query; parameters that may not be given are faults.</summary>
    public static CsvQuery Read(IQueryCollection query, IReadOnlyList<string> known, Faults faults)
    {
        foreach (var name in query.Keys.Where(name => !known.Contains(name)))
        {
            faults.Add(Place.OfQuery(name), FaultCode.UnknownField, () => $"{Given.Quoted(name)} is no parameter here.{Instead(name, known)}");
        }

        string? unknown = query[UnknownColumns];
        if (unknown is not (null or Warn or Refuse))
        {
            faults.Add(Place.OfQuery(UnknownColumns), FaultCode.NotOneOf, () => $"{Given.Quoted(unknown)} was given; it must be one of {Given.List([Warn, Refuse])}.");
        }

        return new CsvQuery(query[CurrencyName], unknown == Refuse);
    }

    /// <summary>Reports parameters that came with a body that is no CSV.</summary>
    public static void ReportStray(IQueryCollection query, Faults faults)
    {
        foreach (var name in query.Keys)
        {
            faults.Add(Place.OfQuery(name), FaultCode.UnknownField, () => OfItems.Contains(name)
                ? $"{Given.Quoted(name)} goes with a body of text/csv only. Leave it out."
                : $"{Given.Quoted(name)} is no parameter here. Leave it out.");
        }
    }

    private static string Instead(string name, IReadOnlyList<string> known) =>
        NearestName.To(name, known) is { } nearest ? $" Did you mean `{nearest}`?" : $" Known are {Given.List(known)}.";
}
