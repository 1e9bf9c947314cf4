using Evenstep.Planning.Budgets;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Headers;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Features;

namespace Evenstep.Service.Http.Errors;

/// <summary>Makes every error that no handler answered a problem document.</summary>
internal static class ErrorPages
{
    private const int ClientClosedRequest = 499;

    /// <summary>How long to wait after the work limit: the same request ends the same way, so only long enough to change it.</summary>
    private static readonly TimeSpan WorkLimitRetry = TimeSpan.FromSeconds(30);

    /// <summary>What whoever runs the service must hear of.</summary>
    private static readonly ProblemKind[] Logged = [ProblemKind.InternalError, ProblemKind.StorageBroken, ProblemKind.StorageAway, ProblemKind.StorageFull];

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
        return ResultOf(failure.Error, failure.Endpoint?.Metadata.GetMetadata<BodyPolicy>()).ExecuteAsync(context);
    }

    /// <summary>What the caller is told of an exception.</summary>
    public static ProblemResult ResultOf(Exception exception, BodyPolicy? rule) => exception switch
    {
        WorkLimitException => new ProblemResult(
            ProblemKind.WorkLimit,
            ErrorMessage.Of("error/detail/work-limit"))
        {
            RetryAfter = WorkLimitRetry,
        },
        BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } => BodyReader.TooLarge(rule ?? BodyReader.Json),
        AnsweredException answered => answered.Answer,
        BadHttpRequestException { StatusCode: StatusCodes.Status408RequestTimeout } => new ProblemResult(
            ProblemKind.Timeout, ErrorMessage.Of("error/detail/request-timeout")),
        BadHttpRequestException { StatusCode: StatusCodes.Status414UriTooLong } => new ProblemResult(
            ProblemKind.AddressTooLong, ErrorMessage.Of("error/detail/address-too-long", ("most", RequestSize.MostTargetCharacters))),
        BadHttpRequestException { StatusCode: StatusCodes.Status431RequestHeaderFieldsTooLarge } => new ProblemResult(
            ProblemKind.HeadersTooLarge, ErrorMessage.Of("error/detail/headers-too-large", ("most", RequestSize.MostHeaderCharacters))),
        BadHttpRequestException bad => new ProblemResult(ProblemKind.OfStatus(bad.StatusCode), bad.Message),
        _ => new ProblemResult(ProblemKind.InternalError, ErrorMessage.Of("error/detail/internal-error")),
    };

    private static string InsteadOf(HttpContext context) =>
        new NearestAddress(context.RequestServices.GetRequiredService<EndpointDataSource>()).InsteadOf(context.Request.Path.ToString());

    /// <summary>What an address takes; of the whole service (`OPTIONS *`), whatever any takes; null where there is no such address.</summary>
    private static string? MethodsOf(HttpContext context) => context.Response switch
    {
        { StatusCode: StatusCodes.Status405MethodNotAllowed } response => $"{response.Headers.Allow}, {HttpMethods.Options}",
        { StatusCode: StatusCodes.Status404NotFound } when !context.Request.Path.HasValue => "DELETE, GET, HEAD, OPTIONS, PATCH, POST, PUT",
        _ => null,
    };

    private static Task AnswerStatus(HttpContext context)
    {
        var request = context.Request;
        if (HttpMethods.IsOptions(request.Method) && MethodsOf(context) is { } methods)
        {
            context.Response.StatusCode = StatusCodes.Status204NoContent;
            context.Response.Headers.Allow = methods;
            return Task.CompletedTask;
        }

        var path = ErrorText.Shortened(request.Path.ToString());
        var status = context.Response.StatusCode;
        ErrorMessage detail = status switch
        {
            StatusCodes.Status404NotFound =>
                $"There is nothing at {path}. {InsteadOf(context)} The document of all there is: `/openapi/v1.json`; for reading: `/swagger`.",
            StatusCodes.Status405MethodNotAllowed =>
                ErrorMessage.Of("error/detail/method-not-allowed", ("path", path), ("method", request.Method), ("methods", context.Response.Headers.Allow)),
            _ => ErrorMessage.Of("error/detail/status", ("status", status)),
        };
        return new ProblemResult(ProblemKind.OfStatus(status), detail).ExecuteAsync(context);
    }
}
