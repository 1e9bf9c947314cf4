using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Spending;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.SpendingCurves;

/// <summary>How much to spend.</summary>
internal static class SpendingCurveRoutes
{
    private const string Route = "/spending-curves";

    public static void MapSpendingCurves(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Route, ChartAsync)
            .WithName("chart")
            .WithTags("Spending curves")
            .WithMetadata(new TakesBody(FieldTable<RecommendationRequest>.Whole, "spending-curve"));

    /// <summary>Says what every budget buys at best, and how much to spend.</summary>
    /// <remarks>
    /// The same request as for a recommendation; its budget is the most one would ever spend. The answer holds the sets that
    /// no allowed set beats in both price and largest step, of those whose steps are within 1 % only the cheaper, and suggests the
    /// one at the knee. `enoughStep`, `prefer`, the wish for a wide view and `explain` play no part. An example that runs as it
    /// stands is chosen above the body.
    /// </remarks>
    /// <response code="200">The curve. `infeasible` is an answer too.</response>
    public static Task<Results<AnswerResult<SpendingCurveAnswer>, ProblemResult>> ChartAsync(
        HttpRequest request, PlanningWalk walk, SpendingCurveHandler handler, CancellationToken cancellationToken) =>
        walk.AnswerAsync<RecommendationAsked, SpendingCurveAnswer>(request, Route, RecommendationReader.Read, handler.ChartAsync, cancellationToken);
}
