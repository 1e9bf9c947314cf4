using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.Recommendations;

/// <summary>What to buy.</summary>
internal static class RecommendationRoutes
{
    public static void MapRecommendations(this IEndpointRouteBuilder routes) =>
        routes.MapPost(RecommendationHandler.Route, RecommendAsync)
            .WithName("recommend")
            .WithTags("Recommendations")
            .WithMetadata(new TakesBody(FieldTable<RecommendationRequest>.Whole, "recommendation"), OfferedFormats.JsonOrPicture);

    /// <summary>Recommends what to buy for a telescope: the proven best set.</summary>
    /// <remarks>
    /// Among all sets of at most `maxPurchases` items of the catalogue that keep to the budget, repeat no power and meet
    /// every demand, it finds the one whose largest step between powers is least, then whose steps are least wide on
    /// average, then what `prefer` says. "Buy nothing" may be the answer, and so may "no set is allowed", with what would
    /// help. `Accept: image/svg+xml` asks for a picture of the powers, before and after. An example that runs as it stands is chosen above the body.
    /// </remarks>
    /// <response code="200">The recommendation. `infeasible` and `nothing-worthwhile` are answers too.</response>
    public static Task<Results<AnswerResult<RecommendationAnswer>, ProblemResult>> RecommendAsync(
        HttpRequest request, PlanningWalk walk, RecommendationHandler handler, CancellationToken cancellationToken) =>
        walk.AnswerAsync<RecommendationAsked, RecommendationAnswer>(
            request, RecommendationHandler.Route, RecommendationReader.Read, handler.AnswerAsync, cancellationToken);
}
