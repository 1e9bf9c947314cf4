using System.Net.Mime;
using System.Reflection;
using System.Text.Json.Serialization.Metadata;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Contract.Languages;
using Microsoft.AspNetCore.Http.Metadata;

namespace Evenstep.Service.Http.Negotiation;

/// <summary>Answers in the language that the caller asks for.</summary>
/// <param name="answer">The answer.</param>
/// <param name="shapeIn">What writes it in a language.</param>
internal sealed class SpokenResult<T>(T answer, Func<Language, JsonTypeInfo<T>> shapeIn)
    : IResult, IStatusCodeHttpResult, IValueHttpResult<T>, IEndpointMetadataProvider
{
    public int? StatusCode => StatusCodes.Status200OK;

    public T? Value => answer;

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var language = httpContext.Request.LanguageAsked();
        var body = AnswerBytes.Of(answer, shapeIn(language));
        return httpContext.Response.GiveAsync(new Representation(AnswerFormat.Json, language), body, null, httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), [MediaTypeNames.Application.Json]));
        builder.Metadata.Add(RequestHeader.AcceptLanguage);
    }
}
