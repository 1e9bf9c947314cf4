using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.BuyingPaths;

/// <summary>In what order to buy.</summary>
internal static class BuyingPathRoutes
{
    private const string Route = "/buying-paths";

    public static void MapBuyingPaths(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Route, LeadAsync)
            .WithName("lead")
            .WithTags("Buying paths")
            .WithMetadata(new TakesBody(FieldTable<RecommendationRequest>.Whole, "buying-path"));

    /// <summary>Says in what order to buy what, so that stopping early is regretted least.</summary>
    /// <remarks>
    /// The same request as for a recommendation. After each purchase the money spent so far could have bought the best set of
    /// that price: by how much that set's largest step is narrower is the loss. Of all orders of all sets whose steps are as good as
    /// the recommendation's must be, it is the cheapest whose greatest loss is within 5 percentage points of the least that any path
    /// has. `prefer` and `explain` play no part. An example that runs as it stands is chosen above the body.
    /// </remarks>
    /// <response code="200">The path. `infeasible` and `nothing-worthwhile` are answers too.</response>
    public static Task<Results<AnswerResult<BuyingPathAnswer>, ProblemResult>> LeadAsync(
        HttpRequest request, PlanningWalk walk, BuyingPathHandler handler, CancellationToken cancellationToken) =>
        walk.AnswerAsync<RecommendationAsked, BuyingPathAnswer>(request, Route, RecommendationReader.Read, handler.LeadAsync, cancellationToken);
}
