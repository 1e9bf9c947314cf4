using System.Buffers.Text;
using System.Globalization;
using System.Text;
using Evenstep.Service.Reading;

namespace Evenstep.Service.Catalogues;

/// <summary>Which of the stored catalogues to list.</summary>
internal sealed class CataloguePage
{
    private const string Limit = "limit";
    private const string Cursor = "cursor";
    private const int DefaultLimit = 20;
    private const int MostLimit = 100;

    private int limit;
    private string? after;

    /// <summary>The page that a query asks for; complete only without faults.</summary>
    public static CataloguePage Read(IQueryCollection query, Faults faults)
    {
        foreach (var name in query.Keys.Where(name => name is not (Limit or Cursor)))
        {
            faults.Add(Place.OfQuery(name), FaultCode.UnknownField, () => $"{Given.Quoted(name)} is no parameter here. Known are {Given.List([Limit, Cursor])}.");
        }

        return new CataloguePage { limit = LimitOf(query[Limit], faults), after = AfterOf(query[Cursor], faults) };
    }

    public CatalogueListAnswer Of(Shelf shelf)
    {
        List<Catalogue> left = [.. shelf.All.Where(one => after is null || string.CompareOrdinal(one.Id, after) > 0).Take(limit + 1)];
        List<CatalogueSummaryAnswer> shown = [.. left.Take(limit).Select(CatalogueSummaryAnswer.Of)];
        return new CatalogueListAnswer
        {
            Catalogues = shown,
            NextCursor = left.Count > limit ? Base64Url.EncodeToString(Encoding.UTF8.GetBytes(shown[^1].Id)) : null,
        };
    }

    private static int LimitOf(string? text, Faults faults)
    {
        if (text is null)
        {
            return DefaultLimit;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var limit) && limit is >= 1 and <= MostLimit)
        {
            return limit;
        }

        faults.Add(Place.OfQuery(Limit), FaultCode.OutOfRange, () => string.Create(CultureInfo.InvariantCulture, $"{Given.Quoted(text)} was given; it must be one whole number from 1 to {MostLimit}."));
        return DefaultLimit;
    }

    /// <summary>A cursor is the id of the catalogue listed last, so that it stays right whatever is stored or deleted meanwhile.</summary>
    private static string? AfterOf(string? cursor, Faults faults)
    {
        if (cursor is null)
        {
            return null;
        }

        var id = Base64Url.IsValid(cursor) ? Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor)) : null;
        if (id is not null && CatalogueFields.CatalogueId.FaultOf(id) is null)
        {
            return id;
        }

        faults.Add(Place.OfQuery(Cursor), FaultCode.InvalidText, () => $"{Given.Quoted(cursor)} was given; it must be the `nextCursor` of a list. Leave it out to begin at the first catalogue.");
        return null;
    }
}
