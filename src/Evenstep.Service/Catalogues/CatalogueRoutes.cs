using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Csv;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Catalogues;

/// <summary>The stored catalogues.</summary>
internal static class CatalogueRoutes
{
    /// <summary>With what the names of example files begin.</summary>
    private const string Examples = "catalogue";

    private const string CsvExample =
        "id,kind,name,price,barrel,focalLengthMm,apparentFieldDeg,eyeReliefMm,factors\r\nwide-25,eyepiece,Wide 25 mm,89.90,1.25in,25,60,18,\r\n" +
        "double,barlow,,39,1.25in,,,,1.5 2\r\n";

    public static void MapCatalogues(this IEndpointRouteBuilder routes)
    {
        var catalogues = routes.MapGroup("/catalogues").WithTags("Catalogues");
        catalogues.MapGet("", List).WithName("list-catalogues").WithMetadata(CataloguePage.Rule).Refuses(ProblemKind.StorageAway);
        catalogues.MapGet("/{id}", Get).WithName("get-catalogue")
            .WithMetadata(OfferedFormats.JsonOrCsv, new GivesBody(CatalogueShapes.Stored, Examples) { Csv = CsvExample });
        catalogues.MapPut("/{id}", PutAsync).WithName("put-catalogue")
            .WithMetadata(CatalogueBody.Rule, CsvQuery.OfItems, new TakesBody(CatalogueShapes.Stored, Examples) { Csv = CsvExample })
            .WithMetadata(new SendsHeaders(StatusCodes.Status201Created, AnswerHeader.ETag, AnswerHeader.Location))
            .Produces<StoredCatalogueAnswer>(StatusCodes.Status201Created);
        catalogues.MapDelete("/{id}", DeleteAsync).WithName("delete-catalogue")
            .WithMetadata(OfferedFormats.Nothing, RequestHeader.IfMatch, RequestHeader.IfNoneMatch)
            .Refuses(ProblemKind.NotFound, ProblemKind.ReadOnly, ProblemKind.PreconditionFailed, ProblemKind.StorageAway, ProblemKind.StorageFull);
        catalogues.MapItems();
    }

    /// <summary>Lists the stored catalogues, without their content.</summary>
    /// <response code="200">The catalogues, by id.</response>
    public static Results<Ok<CatalogueListAnswer>, ProblemResult> List(HttpRequest request, CatalogueSnapshot snapshot)
    {
        var faults = new Faults();
        var page = CataloguePage.Read(request.Query, faults);
        return faults.Any ? ProblemResult.Of(faults, "query") : TypedResults.Ok(page.Of(snapshot));
    }

    /// <summary>Gives a stored catalogue.</summary>
    /// <remarks>
    /// Equal content is equal to the byte, in the order in which it was stored, with absent fields left out. With `Accept: text/csv`
    /// it is the items alone, a column for every field that any of them has. A text that a spreadsheet would take for a formula has an
    /// apostrophe before it, which storing the CSV again takes off.
    /// </remarks>
    /// <param name="id">The catalogue's id.</param>
    /// <param name="request"></param>
    /// <param name="snapshot"></param>
    /// <response code="200">The catalogue, with its version as `ETag`.</response>
    /// <response code="304">It is still the one that `If-None-Match` names.</response>
    public static Results<ContentResult, ProblemResult> Get(string id, HttpRequest request, CatalogueSnapshot snapshot) =>
        snapshot.Find(id) is { } catalogue
            ? new ContentResult(catalogue, CatalogueForm.AskedFor(request))
            : new ProblemResult(ProblemKind.NotFound, snapshot.NoSuch(id));

    /// <summary>Stores a catalogue, whole, in place of whatever there is.</summary>
    /// <remarks>
    /// With `If-None-Match: *` only if there is none yet, with `If-Match` only in place of the version named. When the answer
    /// comes, the catalogue is stored for good. An example is chosen above the body. A CSV is the catalogue's items: a header row of
    /// field names, separated by commas or semicolons; `factors` separated by spaces; a column such as `attributes.colour` for each
    /// attribute. The telescopes of a catalogue that is stored already stay. Faults are named by line and column, such as `/line/5/price`.
    /// `warnings` are about data that can hardly be right, and refuse nothing.
    /// </remarks>
    /// <param name="id">The catalogue's id: 1 to 63 lower-case letters, digits and hyphens, a hyphen not first.</param>
    /// <param name="request"></param>
    /// <param name="owner"></param>
    /// <param name="handler"></param>
    /// <param name="cancellationToken"></param>
    /// <response code="200">It is stored in place of another version, or was stored already; its version is the `ETag`.</response>
    /// <response code="201">It is stored, and there was none before; its version is the `ETag`.</response>
    public static async Task<Results<StoredResult, ProblemResult>> PutAsync(
        string id, HttpRequest request, Owner owner, CatalogueHandler handler, CancellationToken cancellationToken)
    {
        var (conditions, unreadable) = Preconditions.Of(request);
        if ((unreadable ?? RefusalOfId(id)) is { } refusal)
        {
            return refusal;
        }

        var body = await CatalogueBody.ReceiveAsync(id, request, cancellationToken);
        return body.Refusal is { } refused
            ? refused
            : StoredResult.Of(await handler.PutAsync(new CatalogueKey(owner, id), body.Make, conditions!, cancellationToken));
    }

    /// <summary>Deletes a catalogue.</summary>
    /// <remarks>With `If-Match` only the version named.</remarks>
    /// <param name="id">The catalogue's id.</param>
    /// <param name="request"></param>
    /// <param name="owner"></param>
    /// <param name="handler"></param>
    /// <param name="cancellationToken"></param>
    /// <response code="204">There is no such catalogue any more.</response>
    public static async Task<Results<NoContent, ProblemResult>> DeleteAsync(
        string id, HttpRequest request, Owner owner, CatalogueHandler handler, CancellationToken cancellationToken)
    {
        var (conditions, unreadable) = Preconditions.Of(request);
        if (unreadable is not null)
        {
            return unreadable;
        }

        var change = await handler.DeleteAsync(new CatalogueKey(owner, id), conditions!, cancellationToken);
        return change.Refusal is { } refusal ? refusal : TypedResults.NoContent();
    }

    private static ProblemResult? RefusalOfId(string id) => CatalogueTexts.Id.FaultOf(id) is null ? null : new ProblemResult(
        ProblemKind.InvalidRequest, ErrorMessage.Of("error/catalogue-id", ("id", ErrorText.Quoted(id)), ("allowed", CatalogueTexts.Id.Allowed)));
}
