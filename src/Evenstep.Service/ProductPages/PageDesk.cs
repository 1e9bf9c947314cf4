using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Service.Caching;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Errors;
using Evenstep.Service.Kits;
using Evenstep.Service.Reading;
using Evenstep.Service.Recommendations;
using Evenstep.Service.Wording;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.ProductPages;

/// <summary>Makes the recommendation of a telescope's page.</summary>
internal sealed class PageDesk(Shelf shelf, AnswerCache cache, RecommendationDesk desk)
{
    private const string Route = "/product-page";

    /// <param name="request">Its query says what is asked.</param>
    /// <param name="body">What its path says.</param>
    /// <param name="gone">The caller waits no more.</param>
    public async Task<Results<PageResult<RecommendationAnswer>, ProblemResult>> RecommendAsync(HttpRequest request, JsonObject body, CancellationToken gone)
    {
        var faults = new Faults();
        PageFields.OfTelescope.Fill(body, request.Query, faults);
        if (PageFields.OfTelescope.Read(body, (json, inBody) => RecommendationReader.Read(json, shelf, inBody), faults) is not { } asked)
        {
            return ProblemResult.Of(faults, "query");
        }

        var bytes = JsonSerializer.SerializeToUtf8Bytes(body, AnswerJson.Shared.JsonObject);
        var language = request.LanguageAsked();
        var key = AnswerKey.Of(Route, language.Tag, shelf.Version, bytes);
        var (answer, isNew) = await cache.GetOrMakeAsync(key, nobodyWaits => AnswerAsync(asked, bytes, language, nobodyWaits), gone);
        AnswerRecord.Take(request.HttpContext.RequestServices, answer, isNew);
        return new PageResult<RecommendationAnswer>(answer.Body, language);
    }

    /// <summary>The answer tells nothing that may differ while it is the same advice: not how long it took, and not the
    /// version of a catalogue in which something else has changed.</summary>
    private async Task<FinishedAnswer> AnswerAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, Language language, CancellationToken nobodyWaits)
    {
        var solved = await desk.SolveAsync(asked, body, nobodyWaits);
        var answer = RecommendationWriter.Write(asked, solved with { Took = TimeSpan.Zero });
        return FinishedAnswer.Of(
            answer with { Catalogue = KitWriter.CatalogueOf(asked.Catalogue) with { Version = null } },
            AnswerJson.In(language).RecommendationAnswer,
            language,
            solved.Plan.Outcome,
            solved.Took);
    }
}
