using System.Buffers.Text;
using System.Globalization;
using System.Text;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Routing;

namespace Evenstep.Service.Catalogues;

/// <summary>Which of the stored catalogues to list.</summary>
internal sealed class CataloguePage
{
    private const int DefaultLimit = 20;
    private const int MostLimit = 100;

    private static readonly Field<int?> Limit =
        Make.Whole("limit", 1, MostLimit, "The most to list at once.").Defaulting(DefaultLimit.ToString(CultureInfo.InvariantCulture));

    private static readonly Field<string?> Cursor = Make.Of(
        "cursor", new TextShape(100, "^[A-Za-z0-9_-]+$", "the `nextCursor` of a list"),
        "Where to go on: the `nextCursor` of the list before. Without it, at the first catalogue.");

    /// <summary>What the query may say.</summary>
    public static readonly QueryRule Rule = new(Limit, Cursor);

    private int limit;
    private string? after;

    /// <summary>The page that a query asks for; complete only without faults.</summary>
    public static CataloguePage Read(IQueryCollection query, Faults faults)
    {
        Rule.ReportUnknown(query, faults);
        return new CataloguePage
        {
            limit = QueryRule.Read(Limit, query, faults) ?? DefaultLimit,
            after = AfterOf(QueryRule.Read(Cursor, query, faults), faults),
        };
    }

    public CatalogueListAnswer Of(CatalogueSnapshot snapshot)
    {
        List<Catalogue> left = [.. snapshot.All.Where(one => after is null || string.CompareOrdinal(one.Id, after) > 0).Take(limit + 1)];
        List<CatalogueSummaryAnswer> shown = [.. left.Take(limit).Select(CatalogueSummaryAnswer.Of)];
        return new CatalogueListAnswer
        {
            Catalogues = shown,
            NextCursor = left.Count > limit ? Base64Url.EncodeToString(Encoding.UTF8.GetBytes(shown[^1].Id)) : null,
        };
    }

    /// <summary>A cursor is the id of the catalogue listed last, so that it stays right whatever is stored or deleted meanwhile.</summary>
    private static string? AfterOf(string? cursor, Faults faults)
    {
        if (cursor is null)
        {
            return null;
        }

        var id = Base64Url.IsValid(cursor) ? Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor)) : null;
        if (id is not null && CatalogueTexts.Id.FaultOf(id) is null)
        {
            return id;
        }

        faults.Add(
            RequestPointer.OfQuery(Cursor.Name), FaultCode.InvalidText,
            () => $"{ErrorText.Quoted(cursor)} was given; it must be the `nextCursor` of a list. Leave it out to begin at the first catalogue.");
        return null;
    }
}
