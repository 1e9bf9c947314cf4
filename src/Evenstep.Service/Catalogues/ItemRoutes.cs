using System.Net.Mime;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Csv;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Catalogues;

/// <summary>Changes of the items of a stored catalogue, for prices and stocks change more often than what is sold.</summary>
internal static class ItemRoutes
{
    private const string MergePatchType = "application/merge-patch+json";
    private const string NdjsonType = "application/x-ndjson";

    private const string CsvExample = "id,price,inStock\r\nwide-25,84.90,\r\ndouble,,false\r\n";

    private static readonly BodyPolicy OfOne = new([MergePatchType], 2, "An item needs no more.");
    private static readonly BodyPolicy OfMany = new([NdjsonType, MediaTypeNames.Text.Csv], CatalogueBody.MostMebibytes, "Send the changes in several parts.");

    private static readonly SendsHeaders NamesTypes = new(StatusCodes.Status415UnsupportedMediaType, AnswerHeader.AcceptPatch);

    public static void MapItems(this IEndpointRouteBuilder catalogues)
    {
        catalogues.MapPatch("/{id}/items/{itemId}", PatchOneAsync).WithName("patch-item")
            .WithMetadata(OfOne, new TakesBody(ItemShapes.Changes, "item-changes") { MediaType = MergePatchType })
            .WithMetadata(NamesTypes)
            .Refuses(ProblemKind.NotFound);
        catalogues.MapPatch("/{id}/items", PatchManyAsync).WithName("patch-items")
            .WithMetadata(OfMany, CsvQuery.OfChanges, new TakesBody(ItemShapes.Changes, "item-changes") { MediaType = NdjsonType, Csv = CsvExample })
            .WithMetadata(NamesTypes)
            .Refuses(ProblemKind.NotFound);
    }

    /// <summary>Changes one item of a catalogue, by a JSON Merge Patch (RFC 7396).</summary>
    /// <remarks>A field given is replaced, null takes it away, and `attributes` change one by one. With `If-Match` only in the version named.</remarks>
    /// <param name="id">The catalogue's id.</param>
    /// <param name="itemId">The item's id.</param>
    /// <param name="request"></param>
    /// <param name="owner"></param>
    /// <param name="handler"></param>
    /// <param name="cancellationToken"></param>
    /// <response code="200">The change is stored for good; the catalogue's new version is the `ETag`.</response>
    public static async Task<Results<StoredResult, ProblemResult>> PatchOneAsync(
        string id, string itemId, HttpRequest request, Owner owner, CatalogueHandler handler, CancellationToken cancellationToken)
    {
        var (conditions, unreadable) = Preconditions.Of(request);
        if (unreadable is not null)
        {
            return unreadable;
        }

        using var body = await BodyReader.OpenAsync(request, OfOne, cancellationToken);
        if (body.Refusal is { } refusal)
        {
            return NamingTypes(refusal, OfOne, request);
        }

        return StoredResult.Of(
            await handler.ReviseAsync(
                new CatalogueKey(owner, id), current => ItemRevision.MakeOne(current, itemId, body.Json), conditions!, cancellationToken));
    }

    /// <summary>Changes many items of a catalogue at once: the price feed.</summary>
    /// <remarks>
    /// A line an item: a JSON object with its `id` and the fields that change, as for one item. Or a CSV: a column `id` and
    /// those that change; an empty cell leaves the item as it is. All of them or, if anything is wrong with any, none; faults
    /// are named by line, such as `/line/5/price`. With `If-Match` only in the version named.
    /// </remarks>
    /// <param name="id">The catalogue's id.</param>
    /// <param name="request"></param>
    /// <param name="owner"></param>
    /// <param name="handler"></param>
    /// <param name="cancellationToken"></param>
    /// <response code="200">The changes are stored for good; the catalogue's new version is the `ETag`.</response>
    public static async Task<Results<StoredResult, ProblemResult>> PatchManyAsync(
        string id, HttpRequest request, Owner owner, CatalogueHandler handler, CancellationToken cancellationToken)
    {
        var (conditions, unreadable) = Preconditions.Of(request);
        if (unreadable is not null)
        {
            return unreadable;
        }

        var received = await BodyReader.ReceiveAsync(request, OfMany, cancellationToken);
        if (received.Refusal is { } refusal)
        {
            return NamingTypes(refusal, OfMany, request);
        }

        return StoredResult.Of(await handler.ReviseAsync(
            new CatalogueKey(owner, id), current => ItemRevision.MakeAll(current, Read), conditions!, cancellationToken));

        IReadOnlyList<ItemChange> Read(Faults faults, WarningList warnings) => OfMany.TypeOf(request.ContentType) == NdjsonType
            ? NdjsonChanges.Read(received.Bytes, request.Query, faults)
            : CsvChanges.Read(received.Bytes, request.Query, faults, warnings);
    }

    /// <summary>Whoever sends another type is told, for programs too, which are taken (RFC 5789).</summary>
    private static ProblemResult NamingTypes(ProblemResult refusal, BodyPolicy rule, HttpRequest request)
    {
        if (refusal.Kind == ProblemKind.UnsupportedMediaType)
        {
            request.HttpContext.Response.Headers[AnswerHeader.AcceptPatch.Name] = string.Join(", ", rule.MediaTypes);
        }

        return refusal;
    }
}
