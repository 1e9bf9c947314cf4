using Evenstep.Planning.Solving;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Door;
using Evenstep.Service.Reading;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Features;

namespace Evenstep.Service.Errors;

/// <summary>Makes every error that no handler answered a problem document.</summary>
internal static class ErrorPages
{
    private const int ClientClosedRequest = 499;

    /// <summary>How long to wait after the work limit: the same request ends the same way, so only long enough to change it.</summary>
    private static readonly TimeSpan WorkLimitRetry = TimeSpan.FromSeconds(30);

    /// <summary>How long to wait for the storage: it is looked for twice a second.</summary>
    private static readonly TimeSpan StorageRetry = TimeSpan.FromSeconds(2);

    /// <summary>What whoever runs the service must hear of.</summary>
    private static readonly ProblemKind[] Logged = [ProblemKind.InternalError, ProblemKind.StorageAway, ProblemKind.StorageFull];

    public static void UseErrorPages(this WebApplication app)
    {
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = AnswerException,
            SuppressDiagnosticsCallback = context => !IsLogged(ResultOf(context.Exception, null)),
        });
        app.UseStatusCodePages(context => AnswerStatus(context.HttpContext));
    }

    /// <summary>Whether whoever runs the service must hear of a problem.</summary>
    public static bool IsLogged(ProblemResult problem) => Logged.Contains(problem.Kind);

    private static Task AnswerException(HttpContext context)
    {
        if (context.RequestAborted.IsCancellationRequested)
        {
            context.Response.StatusCode = ClientClosedRequest;
            return Task.CompletedTask;
        }

        var failure = context.Features.GetRequiredFeature<IExceptionHandlerFeature>();
        return ResultOf(failure.Error, failure.Endpoint?.Metadata.GetMetadata<DoorRule>()).ExecuteAsync(context);
    }

    /// <summary>What the caller is told of an exception.</summary>
    public static ProblemResult ResultOf(Exception exception, DoorRule? rule) => exception switch
    {
        WorkLimitException => new ProblemResult(
            ProblemKind.WorkLimit,
            "The work limit ended before any allowed set of purchases was found, and the same request would end the same way. Ask for less: lower `limits.maxPurchases` or `limits.maxBarlows`, set `preferences.barlows` or `preferences.zooms` to `avoid`, or name fewer telescopes or demands.")
        {
            RetryAfter = WorkLimitRetry,
        },
        BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } => FrontDoor.TooLarge(rule ?? FrontDoor.Json),
        StorageAwayException away => new ProblemResult(
            ProblemKind.StorageAway, $"{away.Message} Send the request again a little later. Requests that change nothing are answered meanwhile.")
        {
            RetryAfter = StorageRetry,
        },
        StorageFullException => new ProblemResult(
            ProblemKind.StorageFull, "There is no room left to store this; what was stored before is as it was. Delete catalogues that are not needed any more, or tell whoever runs the service."),
        BadHttpRequestException bad => new ProblemResult(ProblemKind.OfStatus(bad.StatusCode), bad.Message),
        _ => new ProblemResult(ProblemKind.InternalError, "The service made a mistake; it is logged. The request may be right. If it happens again, tell whoever runs the service when it happened."),
    };

    private static string InsteadOf(HttpContext context) =>
        new NearestAddress(context.RequestServices.GetRequiredService<EndpointDataSource>()).InsteadOf(context.Request.Path.ToString());

    private static Task AnswerStatus(HttpContext context)
    {
        var request = context.Request;
        var path = Given.Shortened(request.Path.ToString());
        var status = context.Response.StatusCode;
        var detail = status switch
        {
            StatusCodes.Status404NotFound => $"There is nothing at {path}. {InsteadOf(context)} The document of all there is: `/openapi/v1.json`; for reading: `/swagger`.",
            StatusCodes.Status405MethodNotAllowed => $"{path} does not take {request.Method}; it takes {context.Response.Headers.Allow}.",
            _ => $"The request was answered with the status {status}.",
        };
        return new ProblemResult(ProblemKind.OfStatus(status), detail).ExecuteAsync(context);
    }
}
