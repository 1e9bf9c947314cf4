using Evenstep.Service.Caching;
using Evenstep.Service.Documents;
using Evenstep.Service.Door;
using Evenstep.Service.Errors;
using Evenstep.Service.Recommendations;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.SecondOpinions;

/// <summary>What to think of a shopping list.</summary>
internal static class SecondOpinionRoutes
{
    private const string Route = "/second-opinions";

    public static void MapSecondOpinions(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Route, JudgeAsync)
            .WithName("judge")
            .WithTags("Second opinions")
            .WithMetadata(new TakesBody(SecondOpinionFields.Body, "second-opinion"), OfferedForms.JsonOrPicture);

    /// <summary>Judges a shopping list beside the advice: what it does, and every rule that it breaks.</summary>
    /// <remarks>
    /// A request for a recommendation with what one means to buy. The answer holds the kit with the list bought, the
    /// recommendation for the same request, and the list's figures minus those of the advice. `Accept: image/svg+xml`
    /// asks for a picture of the powers: what there is, the list, the advice. An example that runs as it stands is chosen
    /// above the body.
    /// </remarks>
    /// <response code="200">The second opinion.</response>
    public static Task<Results<AnswerResult<SecondOpinionAnswer>, ProblemResult>> JudgeAsync(
        HttpRequest request, PlanningWalk walk, RecommendationDesk desk, AnswerDesk answers, CancellationToken gone) =>
        walk.AnswerAsync<SecondOpinionAsked, SecondOpinionAnswer>(
            request, Route, SecondOpinionReader.Read, (asked, body, manner, nobodyWaits) => AnswerAsync(desk, answers, asked, body, manner, nobodyWaits), gone);

    private static async Task<FinishedAnswer> AnswerAsync(
        RecommendationDesk desk, AnswerDesk answers, SecondOpinionAsked asked, ReadOnlyMemory<byte> body, Manner manner, CancellationToken nobodyWaits)
    {
        var solved = await desk.SolveAsync(asked.Planning, body, nobodyWaits);
        var (language, outcome) = (manner.Language, solved.Plan.Outcome);
        return await answers.WriteAsync(
            budget => manner.Form == AnswerForm.Picture
                ? FinishedAnswer.Of(SecondOpinionScene.Of(asked, solved.Plan, budget), language, outcome, solved.Took)
                : FinishedAnswer.Of(
                    SecondOpinionWriter.Write(asked, solved, budget), AnswerJson.In(language).SecondOpinionAnswer, language, outcome, solved.Took),
            nobodyWaits);
    }
}
