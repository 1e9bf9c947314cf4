using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Planning.Budgets;
using Evenstep.Service.Caching;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Door;
using Evenstep.Service.Errors;
using Evenstep.Service.Kits;
using Evenstep.Service.Reading;
using Evenstep.Service.Recommendations;
using Evenstep.Service.Wording;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.ProductPages;

/// <summary>Makes the recommendation of a telescope's page.</summary>
internal sealed class PageDesk(Shelf shelf, AnswerCache cache, RecommendationDesk recommendations, SuggestionDesk suggestions, AnswerDesk answers)
{
    private const string WithBudget = "/product-page/with-budget";
    private const string Suggested = "/product-page/suggested";

    /// <param name="request">Its query says what is asked.</param>
    /// <param name="form">The form to answer in.</param>
    /// <param name="body">What its path says.</param>
    /// <param name="gone">The caller waits no more.</param>
    public async Task<Results<PageResult<RecommendationAnswer>, ProblemResult>> RecommendAsync(
        HttpRequest request, AnswerForm form, JsonObject body, CancellationToken gone)
    {
        var faults = new Faults();
        PageFields.OfTelescope.Fill(body, request.Query, faults);
        var hasBudget = PageFields.NamesBudget(body);
        if (!hasBudget)
        {
            PageFields.LeaveMoneyAside(body);
        }

        if (PageFields.OfTelescope.Read(body, request.Query, (json, inBody) => RecommendationReader.Read(json, shelf, inBody), faults) is not { } asked)
        {
            return ProblemResult.Of(faults, "query");
        }

        var bytes = JsonSerializer.SerializeToUtf8Bytes(body, AnswerJson.Shared.JsonObject);
        var manner = new Manner(form, request.LanguageAsked());
        var key = AnswerKey.Of(hasBudget ? WithBudget : Suggested, manner, shelf, bytes);
        var (answer, isNew) = await cache.GetOrMakeAsync(key, nobodyWaits => AnswerAsync(asked, hasBudget, bytes, manner, nobodyWaits), gone);
        AnswerRecord.Take(request.HttpContext.RequestServices, answer, isNew);
        return new PageResult<RecommendationAnswer>(answer.Manner, answer.Body);
    }

    private async Task<FinishedAnswer> AnswerAsync(
        RecommendationAsked asked, bool hasBudget, ReadOnlyMemory<byte> body, Manner manner, CancellationToken nobodyWaits)
    {
        var (solved, notes) = hasBudget
            ? (await recommendations.SolveAsync(asked, body, nobodyWaits), [])
            : await suggestions.SolveAsync(asked, body, nobodyWaits);
        return await answers.WriteAsync(
            budget => manner.Form == AnswerForm.Picture
                ? RecommendationDesk.Finish(asked, solved, manner, budget)
                : FinishedAnswer.Of(
                    Write(asked, solved, notes, budget),
                    AnswerJson.In(manner.Language).RecommendationAnswer,
                    manner.Language,
                    solved.Plan.Outcome,
                    solved.Took),
            nobodyWaits);
    }

    /// <summary>The answer tells nothing that may differ while it is the same advice: not how long it took, and not the
    /// version of a catalogue in which something else has changed.</summary>
    private static RecommendationAnswer Write(RecommendationAsked asked, Solved solved, IReadOnlyList<RemarkAnswer> notes, WorkBudget budget)
    {
        var answer = RecommendationWriter.Write(asked, solved with { Took = TimeSpan.Zero }, budget);
        return answer with
        {
            Catalogue = KitWriter.CatalogueOf(asked.Catalogue) with { Version = null },
            Notes = [.. answer.Notes, .. notes],
        };
    }
}
