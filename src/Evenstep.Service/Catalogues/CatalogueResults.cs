using System.Net.Mime;
using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;

namespace Evenstep.Service.Catalogues;

/// <summary>Says that a catalogue is stored.</summary>
internal sealed class StoredResult(Change change) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var (response, catalogue) = (httpContext.Response, change.Catalogue!);
        response.StatusCode = change.IsNew ? StatusCodes.Status201Created : StatusCodes.Status200OK;
        response.GetTypedHeaders().ETag = Preconditions.TagOf(catalogue.Version!);
        if (change.IsNew)
        {
            response.Headers.Location = httpContext.Request.Path.Value;
        }

        return response.WriteAsJsonAsync(CatalogueSummaryAnswer.Of(catalogue), AnswerJson.Shared.CatalogueSummaryAnswer, cancellationToken: httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(CatalogueSummaryAnswer), [MediaTypeNames.Application.Json]));
}

/// <summary>Gives a catalogue as it is stored, or says that the caller has it already.</summary>
internal sealed class ContentResult(Catalogue catalogue) : IResult, IEndpointMetadataProvider
{
    private const string ContentType = "application/json; charset=utf-8";

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var headers = response.GetTypedHeaders();
        headers.ETag = Preconditions.TagOf(catalogue.Version!);

        // It may be kept, but not shown without asking whether it is still the one.
        headers.CacheControl = new() { Private = true, NoCache = true };
        if (Preconditions.IsKnown(httpContext.Request, catalogue.Version!))
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        response.ContentType = ContentType;
        response.ContentLength = catalogue.Content.Length;
        await response.Body.WriteAsync(catalogue.Content, httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status304NotModified));
}
