using System.Net.Mime;
using System.Reflection;
using System.Text.Json.Serialization.Metadata;
using Evenstep.Service.Door;
using Microsoft.AspNetCore.Http.Metadata;

namespace Evenstep.Service.Wording;

/// <summary>Answers in the language that the caller asks for.</summary>
/// <param name="answer">One of the records of <see cref="AnswerJson"/>.</param>
internal sealed class SpokenResult<T>(T answer) : IResult, IStatusCodeHttpResult, IValueHttpResult<T>, IEndpointMetadataProvider
{
    public int? StatusCode => StatusCodes.Status200OK;

    public T? Value => answer;

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var language = httpContext.Request.LanguageAsked();
        var shape = (JsonTypeInfo<T>)AnswerJson.In(language).GetTypeInfo(typeof(T))!;
        var body = AnswerBytes.Of(answer, shape);
        return httpContext.Response.GiveAsync(new Manner(AnswerForm.Json, language), body, httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), [MediaTypeNames.Application.Json]));
        builder.Metadata.Add(RequestHeader.AcceptLanguage);
    }
}
