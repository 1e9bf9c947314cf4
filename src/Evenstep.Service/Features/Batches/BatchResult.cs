using System.Globalization;
using System.IO.Pipelines;
using System.Reflection;
using System.Runtime.CompilerServices;
using Evenstep.Service.Answering.Admission;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Logging;
using Evenstep.Service.Http.Negotiation;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Core.Features;
using Serilog;

using BadHttpRequestException = Microsoft.AspNetCore.Http.BadHttpRequestException;

namespace Evenstep.Service.Features.Batches;

/// <summary>Answers a batch while it is being sent.</summary>
internal sealed class BatchResult(BatchLineHandler handler, Caller caller, WorkCharge charge) : IResult, IStatusCodeHttpResult, IEndpointMetadataProvider
{
    /// <summary>So many lines are under way at once: enough to keep all processors busy beside a line that takes long.</summary>
    private static readonly int MostAtOnce = 8 * Environment.ProcessorCount;

    /// <summary>A caller may think between two lines, but not for ever.</summary>
    private static readonly MinDataRate Patience = new(bytesPerSecond: 1, gracePeriod: TimeSpan.FromMinutes(5));

    public int? StatusCode => StatusCodes.Status200OK;

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        using var lines = new BatchLineWriter(Begin(httpContext), httpContext.Request.LanguageAsked());
        try
        {
            await AnswerAllAsync(httpContext, lines);
        }
        catch (BadHttpRequestException)
        {
            // The body broke off. The status is long sent: an answer that breaks off too is the only way to say so.
            httpContext.Abort();
        }
        finally
        {
            var outcome = string.Create(CultureInfo.InvariantCulture, $"batch of {lines.Lines} with {lines.Problems} refused");
            httpContext.RequestServices.GetRequiredService<IDiagnosticContext>().Set(RequestLog.Outcome, outcome);
        }
    }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(BatchAnswer), [BatchRoutes.MediaType]));
        builder.Metadata.Add(RequestHeader.AcceptLanguage);
    }

    private Task AnswerAllAsync(HttpContext context, BatchLineWriter lines)
    {
        var cancellationToken = context.RequestAborted;
        var representation = new Representation(AnswerFormat.Json, context.Request.LanguageAsked());
        var work = new InOrder<BatchLine, AnsweredLine>(MostAtOnce, (line, end) => AnswerAsync(line, representation, end));
        return work.RunAsync(
            LinesOf(context.Request.BodyReader, cancellationToken), line => lines.WriteAsync(line, cancellationToken), () => lines.SendAsync(cancellationToken),
            cancellationToken);
    }

    /// <summary>A batch may take long: a key that is revoked meanwhile gets no further answers.</summary>
    private async Task<AnsweredLine> AnswerAsync(BatchLine line, Representation representation, CancellationToken end)
    {
        if (caller.IsLockedOut)
        {
            return AnsweredLine.Refused(line, line.Text is { } text ? CallersId.Cut(text)?.Id : null, KeyCheck.LockedOut());
        }

        var claim = SolveClaim.Current.OfBatchLine();
        SolveClaim.Current = claim;
        var answered = await handler.AnswerAsync(line, representation, end);
        charge.Take(caller.Rate, claim);
        return answered;
    }

    /// <summary>The lines, no faster than the key of the caller allows.</summary>
    private async IAsyncEnumerable<BatchLine> LinesOf(PipeReader body, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await foreach (var line in new BatchLineReader(body).ReadAllAsync(cancellationToken))
        {
            if (caller.Rate is { } rate)
            {
                await rate.WaitAsync(cancellationToken);
            }

            yield return line;
        }
    }

    /// <summary>Sets up an exchange in which both sides talk at the same time.</summary>
    private static PipeWriter Begin(HttpContext context)
    {
        context.Features.Get<IHttpResponseBodyFeature>()?.DisableBuffering();
        if (context.Features.Get<IHttpMinRequestBodyDataRateFeature>() is { } rate)
        {
            // HTTP/2 has no rate of a single request; there it can only be left out.
            rate.MinDataRate = HttpProtocol.IsHttp2(context.Request.Protocol) || HttpProtocol.IsHttp3(context.Request.Protocol) ? null : Patience;
        }

        context.Response.ContentType = BatchRoutes.MediaType;
        context.Response.SayLanguage(context.Request.LanguageAsked());
        return context.Response.BodyWriter;
    }
}
