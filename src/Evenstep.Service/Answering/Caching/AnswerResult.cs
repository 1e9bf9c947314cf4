using System.Net.Mime;
using System.Reflection;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Logging;
using Evenstep.Service.Http.Negotiation;
using Microsoft.AspNetCore.Http.Metadata;
using Serilog;

namespace Evenstep.Service.Answering.Caching;

/// <summary>Gives a finished answer.</summary>
/// <typeparam name="T">What it was before it was written, for the OpenAPI document.</typeparam>
/// <param name="answer">The answer.</param>
/// <param name="isNew">Whether it was made for this request.</param>
internal sealed class AnswerResult<T>(FinishedAnswer answer, bool isNew) : IResult, IStatusCodeHttpResult, IEndpointMetadataProvider
{
    public int? StatusCode => StatusCodes.Status200OK;

    public Task ExecuteAsync(HttpContext httpContext)
    {
        AnswerRecord.Take(httpContext.RequestServices, answer, isNew);
        return httpContext.Response.GiveAsync(
            answer.Representation, answer.Body, PictureStyle.PolicyOf(answer.Representation.Form), httpContext.RequestAborted);
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), [MediaTypeNames.Application.Json]));
        builder.Metadata.Add(RequestHeader.AcceptLanguage);
        builder.Metadata.Add(new MayRefuse(ProblemKind.NotFound, ProblemKind.WorkLimit, ProblemKind.StorageAway));
    }
}

/// <summary>Notes in the metrics and in the log what was answered.</summary>
internal static class AnswerRecord
{
    public static void Take(IServiceProvider services, FinishedAnswer answer, bool isNew)
    {
        services.GetRequiredService<ServiceMeter>().Answered(answer.Outcome);
        var log = services.GetRequiredService<IDiagnosticContext>();
        log.Set(RequestLog.Outcome, Words<Outcome>.Of(answer.Outcome));
        log.Set(RequestLog.SolvingMs, isNew ? answer.Took.TotalMilliseconds : 0.0);
    }
}
