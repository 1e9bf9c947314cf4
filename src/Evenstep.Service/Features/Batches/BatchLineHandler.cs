using System.Globalization;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Errors;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Features.Batches;

/// <summary>Answers one line of a batch, whatever is in it: the same walk as that of a request alone.</summary>
internal sealed partial class BatchLineHandler(
    Owner owner, CatalogueRegistry registry, AnswerCache cache, RecommendationHandler handler, ServiceMeter meter, ILogger<BatchLineHandler> logger)
{
    public async Task<AnsweredLine> AnswerAsync(BatchLine line, Representation representation, CancellationToken cancellationToken)
    {
        if (line.Text is not { } text)
        {
            return AnsweredLine.Refused(line, null, TooLong());
        }

        var labelled = CallersId.Cut(text);
        try
        {
            return await AnswerAsync(line, text, labelled, representation, cancellationToken);
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            throw;
        }
#pragma warning disable CA1031 // Whatever went wrong with one line, the others are answered.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            return AnsweredLine.Refused(line, labelled?.Id, ProblemOf(exception, line));
        }
    }

    private async Task<AnsweredLine> AnswerAsync(
        BatchLine line, ReadOnlyMemory<byte> text, Labelled? labelled, Representation representation, CancellationToken cancellationToken)
    {
        // For each line anew: a batch may take long, and its answers are those of the moment.
        var snapshot = registry.Of(owner);
        var (asked, refused) = Understand(line, text, snapshot);
        if (asked is null || labelled is null)
        {
            return refused!;
        }

        var key = AnswerKey.Of(RecommendationHandler.Route, representation, snapshot, labelled.Request.Span);
        var (answer, _) =
            await cache.GetOrMakeAsync(key, nobodyWaits => handler.AnswerAsync(asked, labelled.Request, representation, nobodyWaits), cancellationToken);
        meter.Answered(answer.Outcome);
        return new AnsweredLine(line.Number, labelled.Id, answer, null);
    }

    /// <summary>One of the two is null.</summary>
    private static (RecommendationAsked? Asked, AnsweredLine? Refused) Understand(BatchLine line, ReadOnlyMemory<byte> text, CatalogueSnapshot snapshot)
    {
        using var body = OpenedBody.Parse(text, "line", line.Number);
        if (body.Refusal is { } refusal)
        {
            return (null, AnsweredLine.Refused(line, null, refusal));
        }

        var faults = new Faults();
        var request = FieldTable<BatchLineRequest>.Whole.Read(body.Json, RequestPointer.Root, faults);
        var asked = request is null ? null : RecommendationReader.Read(request.Planning, body.Json, snapshot, faults, out _);
        return asked is null
            ? (null, AnsweredLine.Refused(line, request?.Id, ProblemResult.Of(faults, "line")))
            : (asked, null);
    }

    private static ProblemResult TooLong() => new(
        ProblemKind.TooLarge,
        string.Create(
            CultureInfo.InvariantCulture,
            $"A line may have at most {BatchLine.MostBytes} bytes ({BatchLine.MostMebibytes} MiB). List fewer items, or name a stored catalogue."));

    private ProblemResult ProblemOf(Exception exception, BatchLine line)
    {
        var problem = ErrorPages.ResultOf(exception, null);
        if (ErrorPages.IsLogged(problem))
        {
            LogFailure(line.Number, exception);
        }

        return problem;
    }

    [LoggerMessage(LogLevel.Error, "Line {Line} of a batch could not be answered.")]
    private partial void LogFailure(long line, Exception exception);
}
