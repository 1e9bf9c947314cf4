using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.Choices;

/// <summary>Several ways of weighing the same wishes.</summary>
internal static class ChoicesRoutes
{
    private const string Route = "/choices";

    public static void MapChoices(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Route, ChooseAsync)
            .WithName("choose")
            .WithTags("Choices")
            .WithMetadata(new TakesBody(FieldTable<RecommendationRequest>.Whole, "choice"), OfferedFormats.JsonOrPicture);

    /// <summary>Weighs the same wishes in several ways, and says what each has more and less of.</summary>
    /// <remarks>
    /// The same request as for a recommendation; its `prefer` stands aside. The answer holds what is best for the least money, for
    /// comfort, for comfort without a Barlow, and for the widest views; ways that choose the same purchases are one. `Accept: image/svg+xml`
    /// asks for a picture of them under one another. Of `explain` only `targets` plays a part. An example that runs as it stands is
    /// chosen above the body.
    /// </remarks>
    /// <response code="200">The choices. `infeasible` is an answer too.</response>
    public static Task<Results<AnswerResult<ChoicesAnswer>, ProblemResult>> ChooseAsync(
        HttpRequest request, PlanningWalk walk, ChoicesHandler handler, CancellationToken cancellationToken) =>
        walk.AnswerAsync<RecommendationAsked, ChoicesAnswer>(request, Route, RecommendationReader.Read, handler.AnswerAsync, cancellationToken);
}
