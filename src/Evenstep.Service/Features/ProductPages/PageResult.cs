using System.Buffers;
using System.Net.Mime;
using System.Reflection;
using System.Security.Cryptography;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Http.Negotiation;
using Microsoft.AspNetCore.Http.Metadata;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>Answers a page, or says that the caller has this very answer already.</summary>
/// <typeparam name="T">What the answer was before it was written as JSON, for the OpenAPI document.</typeparam>
/// <param name="representation">The form and the language it is in.</param>
/// <param name="body">The answer.</param>
internal sealed class PageResult<T>(Representation representation, ReadOnlySequence<byte> body) : IResult, IEndpointMetadataProvider
{
    /// <summary>A shop's own cache may show it for a minute, and a while longer while it fetches it anew.</summary>
    public const string CacheControl = "public, max-age=60, stale-while-revalidate=600";

    private const int TagBytes = 12;

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var version = VersionOf(body);
        if (Preconditions.RefusalOfRead(httpContext.Request, version) is { } refusal)
        {
            return refusal.ExecuteAsync(httpContext);
        }

        response.Headers.CacheControl = CacheControl;
        response.Headers.ETag = Preconditions.TagOf(version).ToString();
        if (!Preconditions.IsKnown(httpContext.Request, version))
        {
            return response.GiveAsync(representation, body, PictureStyle.PolicyOf(representation.Form), httpContext.RequestAborted);
        }

        response.SayLanguage(representation.Language);
        response.StatusCode = StatusCodes.Status304NotModified;
        return Task.CompletedTask;
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), [MediaTypeNames.Application.Json]));
        builder.Metadata.Add(RequestHeader.AcceptLanguage);
        ConditionalRead.Declare(builder);
    }

    /// <summary>Of the answer itself: what changes elsewhere in the catalogue makes no other.</summary>
    private static string VersionOf(ReadOnlySequence<byte> answer)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var piece in answer)
        {
            hash.AppendData(piece.Span);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset().AsSpan(0, TagBytes));
    }
}
