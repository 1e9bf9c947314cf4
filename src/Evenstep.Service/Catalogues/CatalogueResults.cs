using System.Net.Mime;
using System.Reflection;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Http.Metadata;

namespace Evenstep.Service.Catalogues;

/// <summary>Says that a catalogue is stored.</summary>
internal sealed class StoredResult(Change change) : IResult, IEndpointMetadataProvider
{
    /// <summary>What became of a change.</summary>
    public static Results<StoredResult, ProblemResult> Of(Change change) => change.Refusal is { } refusal ? refusal : new StoredResult(change);

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var (response, catalogue) = (httpContext.Response, change.Catalogue!);
        response.StatusCode = change.IsNew ? StatusCodes.Status201Created : StatusCodes.Status200OK;
        response.GetTypedHeaders().ETag = Preconditions.TagOf(catalogue.Version!);
        if (change.IsNew)
        {
            response.Headers.Location = httpContext.Request.Path.Value;
        }

        var language = httpContext.Request.LanguageAsked();
        response.SayLanguage(language);
        return response.WriteAsJsonAsync(
            StoredCatalogueAnswer.Of(change), CatalogueJson.In(language).StoredCatalogueAnswer, cancellationToken: httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(StoredCatalogueAnswer), [MediaTypeNames.Application.Json]));
        builder.Metadata.Add(RequestHeader.AcceptLanguage);
        builder.Metadata.Add(RequestHeader.IfMatch);
        builder.Metadata.Add(RequestHeader.IfNoneMatch);
        builder.Metadata.Add(new SendsHeaders(StatusCodes.Status200OK, AnswerHeader.ETag));
        builder.Metadata.Add(new MayRefuse(ProblemKind.ReadOnly, ProblemKind.PreconditionFailed, ProblemKind.StorageAway, ProblemKind.StorageFull));
    }
}

/// <summary>Gives a catalogue as it is stored, or says that the caller has it already.</summary>
internal sealed class ContentResult(Catalogue catalogue, CatalogueForm form) : IResult, IEndpointMetadataProvider
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var headers = response.GetTypedHeaders();
        var version = catalogue.Version! + form.TagEnding;
        if (Preconditions.RefusalOfRead(httpContext.Request, version) is { } refusal)
        {
            await refusal.ExecuteAsync(httpContext);
            return;
        }

        headers.ETag = Preconditions.TagOf(version);

        // It may be kept, but not shown without asking whether it is still the one.
        headers.CacheControl = new() { Private = true, NoCache = true };
        if (Preconditions.IsKnown(httpContext.Request, version))
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        var content = form.Write(catalogue);
        response.ContentType = form.Form.ContentType;
        response.ContentLength = content.Length;
        await response.Body.WriteAsync(content, httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) => ConditionalRead.Declare(builder);
}
