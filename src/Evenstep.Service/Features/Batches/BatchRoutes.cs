using Evenstep.Service.Answering.Admission;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace Evenstep.Service.Features.Batches;

/// <summary>Many recommendations at once.</summary>
internal static class BatchRoutes
{
    public const string Route = "/recommendations/batch";
    public const string MediaType = "application/x-ndjson";

    /// <summary>Said in the document. Its last paragraph is one line there, and too long for one here.</summary>
    private const string Description =
        """
        The body is newline-delimited JSON: each line a request for a recommendation with an `id` of the caller's, a text of up
        to 100 characters. Each is answered by a line with that `id` and either `recommendation` or `problem`, in the order
        received and while the body is still being sent: read while you send. A line that cannot be read has `id` null and its
        number in `line`; it spoils nothing else. A line may have 2 MiB, the body has no limit; empty lines are passed over.

        """ +
        "Where a key has a rate, each line counts as a request: the batch waits and is not refused. " +
        "Single requests go before those of a batch. The schema and the example below are those of one line.";

    /// <summary>Of the body as a whole nothing is asked but its type; each line has the limit of a request.</summary>
    private static readonly BodyPolicy Lines = new([MediaType], BatchLine.MostMebibytes, "");

    public static void AddBatches(this IServiceCollection services) => services.AddScoped<BatchLineHandler>();

    public static void MapBatches(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Route, RecommendAll)
            .WithName("recommend-batch")
            .WithDescription(Description)
            .WithTags("Recommendations")
            .WithMetadata(
                OfferedFormats.LinesOnly, new DisableRequestSizeLimitAttribute(),
                new TakesBody(FieldTable<BatchLineRequest>.Whole, "batch") { MediaType = MediaType });

    /// <summary>Recommends for many telescopes at once, one request a line.</summary>
    /// <response code="200">A line for each request, such as this.</response>
    public static Results<BatchResult, ProblemResult> RecommendAll(HttpRequest request, BatchLineHandler handler, Caller caller, WorkCharge charge) =>
        (BodyReader.RefusalOfType(request, Lines) ?? BodyReader.RefusalOfCoding(request)) is { } refusal ? refusal : new BatchResult(handler, caller, charge);
}
