using System.Net.Mime;
using System.Reflection;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Wording;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.ProductPages;

/// <summary>Answers a page, or says that the caller has this very answer already.</summary>
/// <typeparam name="T">What the answer was before it was written, for the OpenAPI document.</typeparam>
/// <param name="body">The answer.</param>
/// <param name="language">What it is written in.</param>
internal sealed class PageResult<T>(ReadOnlyMemory<byte> body, Language language) : IResult, IEndpointMetadataProvider
{
    /// <summary>A shop's own cache may show it for a minute, and a while longer while it fetches it anew.</summary>
    public const string CacheControl = "public, max-age=60, stale-while-revalidate=600";

    private const string ContentType = "application/json; charset=utf-8";
    private const int TagBytes = 12;

    public static PageResult<T> Of(T answer, JsonTypeInfo<T> shape, Language language) =>
        new(JsonSerializer.SerializeToUtf8Bytes(answer, shape), language);

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var version = VersionOf(body.Span);
        response.Headers.AppendCommaSeparatedValues(HeaderNames.Vary, HeaderNames.Accept);
        response.SayLanguage(language);
        response.Headers.CacheControl = CacheControl;
        response.Headers.ETag = Preconditions.TagOf(version).ToString();
        if (Preconditions.IsKnown(httpContext.Request, version))
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        response.ContentType = ContentType;
        response.ContentLength = body.Length;
        await response.Body.WriteAsync(body, httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), [MediaTypeNames.Application.Json]));
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status304NotModified));
        builder.Metadata.Add(SpeaksLanguages.Yes);
    }

    /// <summary>Of the answer itself: what changes elsewhere in the catalogue makes no other.</summary>
    private static string VersionOf(ReadOnlySpan<byte> answer) => Convert.ToHexStringLower(SHA256.HashData(answer).AsSpan(0, TagBytes));
}
