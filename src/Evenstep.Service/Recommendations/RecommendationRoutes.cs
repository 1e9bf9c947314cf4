using Evenstep.Service.Caching;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Documents;
using Evenstep.Service.Door;
using Evenstep.Service.Errors;
using Evenstep.Service.Reading;
using Evenstep.Service.Wording;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Recommendations;

/// <summary>What to buy.</summary>
internal static class RecommendationRoutes
{
    private const string Route = "/recommendations";

    public static void MapRecommendations(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Route, RecommendAsync)
            .WithName("recommend")
            .WithTags("Recommendations")
            .WithMetadata(new TakesBody(RecommendationFields.Body, "recommendation"));

    /// <summary>Recommends what to buy for a telescope: the proven best set.</summary>
    /// <remarks>
    /// Among all sets of at most `maxPurchases` items of the catalogue that keep to the budget, repeat no power and meet
    /// every demand, it finds the one whose largest step between powers is least, then whose steps are least wide on
    /// average, then what `prefer` says. "Buy nothing" may be the answer, and so may "no set is allowed", with what would
    /// help. An example that runs as it stands is chosen above the body.
    /// </remarks>
    /// <response code="200">The recommendation. `infeasible` and `nothing-worthwhile` are answers too.</response>
    public static async Task<Results<AnswerResult<RecommendationAnswer>, ProblemResult>> RecommendAsync(
        HttpRequest request, Shelf shelf, AnswerCache cache, RecommendationDesk desk, CancellationToken gone)
    {
        var received = await FrontDoor.ReceiveAsync(request, gone);
        if (received.Refusal is { } refusal)
        {
            return refusal;
        }

        var language = request.LanguageAsked();
        var key = AnswerKey.Of(Route, language.Tag, shelf.Version, received.Bytes.Span);
        return await cache.FindAsync(key, gone) is { } kept
            ? new AnswerResult<RecommendationAnswer>(kept, isNew: false)
            : await AnswerAsync(received.Bytes, language, key, shelf, cache, desk, gone);
    }

    private static async Task<Results<AnswerResult<RecommendationAnswer>, ProblemResult>> AnswerAsync(
        ReadOnlyMemory<byte> bytes, Language language, string key, Shelf shelf, AnswerCache cache, RecommendationDesk desk, CancellationToken gone)
    {
        using var body = StrictJson.Parse(bytes);
        if (body.Refusal is { } refusal)
        {
            return refusal;
        }

        var faults = new Faults();
        if (RecommendationReader.Read(body.Json, shelf, faults) is not { } asked)
        {
            return ProblemResult.Of(faults);
        }

        var (answer, isNew) = await cache.GetOrMakeAsync(key, nobodyWaits => desk.AnswerAsync(asked, bytes, language, nobodyWaits), gone);
        return new AnswerResult<RecommendationAnswer>(answer, isNew);
    }
}
