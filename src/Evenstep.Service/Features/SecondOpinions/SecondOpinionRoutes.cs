using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>What to think of a shopping list.</summary>
internal static class SecondOpinionRoutes
{
    private const string Route = "/second-opinions";

    public static void MapSecondOpinions(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Route, JudgeAsync)
            .WithName("judge")
            .WithTags("Second opinions")
            .WithMetadata(new TakesBody(FieldTable<SecondOpinionRequest>.Whole, "second-opinion"), OfferedFormats.JsonOrPicture);

    /// <summary>Judges a shopping list beside the advice: what it does, and every rule that it breaks.</summary>
    /// <remarks>
    /// A request for a recommendation with what one means to buy. The answer holds the kit with the list bought, the
    /// recommendation for the same request, and the list's figures minus those of the advice. `Accept: image/svg+xml`
    /// asks for a picture of the powers: what there is, the list, the advice. An example that runs as it stands is chosen
    /// above the body.
    /// </remarks>
    /// <response code="200">The second opinion.</response>
    public static Task<Results<AnswerResult<SecondOpinionAnswer>, ProblemResult>> JudgeAsync(
        HttpRequest request, PlanningWalk walk, RecommendationHandler handler, WritingGate answers, CancellationToken cancellationToken) =>
        walk.AnswerAsync<SecondOpinionAsked, SecondOpinionAnswer>(
            request, Route, SecondOpinionReader.Read,
            (asked, body, representation, nobodyWaits) => AnswerAsync(handler, answers, asked, body, representation, nobodyWaits), cancellationToken);

    private static async Task<FinishedAnswer> AnswerAsync(
        RecommendationHandler handler, WritingGate answers, SecondOpinionAsked asked, ReadOnlyMemory<byte> body, Representation representation,
        CancellationToken nobodyWaits)
    {
        var solved = await handler.SolveAsync(asked.Planning, body, nobodyWaits);
        var (language, outcome) = (representation.Language, solved.Plan.Outcome);
        return await answers.WriteAsync(
            budget => representation.Form == AnswerFormat.Picture
                ? FinishedAnswer.Of(SecondOpinionScene.Of(asked, solved.Plan, budget), language, outcome, solved.Took)
                : FinishedAnswer.Of(
                    SecondOpinionWriter.Write(asked, solved, budget), SecondOpinionJson.In(language).SecondOpinionAnswer, language, outcome, solved.Took),
            nobodyWaits);
    }
}
