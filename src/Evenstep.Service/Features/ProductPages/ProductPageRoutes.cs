using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Headers;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>What a shop shows on the pages of what it sells.</summary>
internal static class ProductPageRoutes
{
    private const string Tag = "Product pages";

    private static readonly (string, string) CatalogueId = ("id", "The catalogue's id.");

    public static void MapProductPages(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/catalogues/{id}/telescopes/{telescopeId}/recommendation", RecommendAsync)
            .WithName("recommend-for-telescope")
            .WithTags(Tag)
            .RequireCors(PageOrigins.Policy)
            .WithMetadata(
                PageFields.OfTelescope.Rule,
                new DescribesPath(ItemRequest.MostIdCharacters, CatalogueId, ("telescopeId", "The telescope's id in the catalogue.")),
                OfferedFormats.JsonOrPicture)
            .Refuses(ProblemKind.WorkLimit);
        routes.MapGet("/catalogues/{id}/items/{itemId}/match", Match)
            .WithName("match-item")
            .WithTags(Tag)
            .RequireCors(PageOrigins.Policy)
            .WithMetadata(
                PageFields.OfItem.Rule, new DescribesPath(ItemRequest.MostIdCharacters, CatalogueId, ("itemId", "The item's id in the catalogue.")),
                OfferedFormats.JsonOrPicture);
    }

    /// <summary>Recommends what goes well with a telescope of the catalogue, and with what is packed with it.</summary>
    /// <remarks>
    /// The answer of `POST /v1/recommendations`, made for a product page. Without a `budget` there is no limit:
    /// the advice is the cheapest kit that is even and comfortable. Owned ids of what the catalogue does not list are left aside
    /// and named in a note. It has an `ETag` of its own, and so neither a `catalogue.version` nor `solver.milliseconds` (null and 0).
    /// `Accept: image/svg+xml` asks for a picture of the powers.
    /// </remarks>
    /// <response code="200">The recommendation.</response>
    /// <response code="304">The answer is the one that `If-None-Match` names.</response>
    public static async Task<Results<PageResult<RecommendationAnswer>, ProblemResult>> RecommendAsync(
        string id, string telescopeId, HttpRequest request, CatalogueSnapshot snapshot, ProductPageHandler handler, CancellationToken cancellationToken)
    {
        var meant = PagePath.TelescopeMeant(snapshot, id, telescopeId);
        return PagePath.RefusalOfTelescope(snapshot, id, meant) is { } refusal
            ? refusal
            : await handler.RecommendAsync(
                request, OfferedFormats.FormFor(request), PageFields.BodyOfTelescope(id, meant), snapshot.Find(id), cancellationToken);
    }

    /// <summary>Says what an item of the catalogue does in a telescope, beside what is owned.</summary>
    /// <remarks>
    /// The telescope is one of the catalogue (`telescope`; what is packed with it counts as owned), or given in full
    /// (`apertureMm`, `focalLengthMm`, `focuserBarrel`). `Accept: image/svg+xml` asks for a picture of the powers.
    /// </remarks>
    /// <response code="200">What it does.</response>
    /// <response code="304">The answer is the one that `If-None-Match` names.</response>
    public static Results<PageResult<MatchAnswer>, ProblemResult> Match(string id, string itemId, HttpRequest request, CatalogueSnapshot snapshot)
    {
        var meant = PagePath.ItemMeant(snapshot, id, itemId);
        if (PagePath.RefusalOfItem(snapshot, id, meant) is { } refusal)
        {
            return refusal;
        }

        var faults = new Faults();
        var body = PageFields.BodyOfItem(id);
        PageFields.OfItem.Fill(body, request.Query, faults);
        var ignored = IgnoredOwned.TakeOut(body, snapshot.Find(id));
        if (PageFields.OfItem.Read(body, request.Query, (json, inBody) => RecommendationReader.Read(json, snapshot, inBody), faults) is not { } asked)
        {
            return ProblemResult.Of(faults, "query");
        }

        var representation = new Representation(OfferedFormats.FormFor(request), request.LanguageAsked());
        return new PageResult<MatchAnswer>(representation, MatchWriter.Write(asked, asked.Catalogue.Items[meant], ignored, representation));
    }
}
