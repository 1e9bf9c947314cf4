using System.Text;
using System.Text.Json.Nodes;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Evenstep.Planning.Budgets;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>Makes the recommendation of a telescope's page.</summary>
internal sealed class ProductPageHandler(CatalogueSnapshot snapshot, AnswerCache cache, RecommendationHandler recommendations, WritingGate answers)
{
    private const string Route = "/product-page";

    /// <param name="request">Its query says what is asked.</param>
    /// <param name="form">The form to answer in.</param>
    /// <param name="body">What its path says.</param>
    /// <param name="catalogue">The catalogue that it names.</param>
    /// <param name="cancellationToken">The caller waits no more.</param>
    public async Task<Results<PageResult<RecommendationAnswer>, ProblemResult>> RecommendAsync(
        HttpRequest request, AnswerFormat form, JsonObject body, Catalogue? catalogue, CancellationToken cancellationToken)
    {
        var faults = new Faults();
        PageFields.OfTelescope.Fill(body, request.Query, faults);
        if (!PageFields.NamesBudget(body))
        {
            PageFields.LeaveMoneyAside(body);
        }

        var bytes = Encoding.UTF8.GetBytes(body.ToJsonString());
        var ignored = IgnoredOwned.TakeOut(body, catalogue);
        if (PageFields.OfTelescope.Read(body, request.Query, (json, inBody) => RecommendationReader.Read(json, snapshot, inBody), faults) is not { } asked)
        {
            return ProblemResult.Of(faults, "query");
        }

        var representation = new Representation(form, request.LanguageAsked());
        var key = AnswerKey.Of(Route, representation, snapshot, bytes);
        var (answer, isNew) = await cache.GetOrMakeAsync(
            key, nobodyWaits => AnswerAsync(asked, ignored, bytes, representation, nobodyWaits), cancellationToken);
        AnswerRecord.Take(request.HttpContext.RequestServices, answer, isNew);
        return new PageResult<RecommendationAnswer>(answer.Representation, answer.Body);
    }

    private async Task<FinishedAnswer> AnswerAsync(
        RecommendationAsked asked, RemarkAnswer? ignored, ReadOnlyMemory<byte> body, Representation representation, CancellationToken nobodyWaits)
    {
        var solved = await recommendations.SolveAsync(asked, body, nobodyWaits);
        return await answers.WriteAsync(
            budget => representation.Form == AnswerFormat.Picture
                ? RecommendationHandler.Finish(asked, solved, representation, budget)
                : FinishedAnswer.Of(
                    Write(asked, solved, ignored, budget),
                    RecommendationJson.In(representation.Language).RecommendationAnswer,
                    representation.Language,
                    solved.Plan.Outcome,
                    solved.Took),
            nobodyWaits);
    }

    /// <summary>The answer tells nothing that may differ while it is the same advice: not how long it took, and not the
    /// version of a catalogue in which something else has changed.</summary>
    private static RecommendationAnswer Write(RecommendationAsked asked, Solved solved, RemarkAnswer? ignored, WorkBudget budget)
    {
        var answer = RecommendationWriter.Write(asked, solved with { Took = TimeSpan.Zero }, budget);
        return answer with
        {
            Catalogue = KitWriter.CatalogueOf(asked.Catalogue) with { Version = null },
            Notes = ignored is null ? answer.Notes : [.. answer.Notes, ignored],
        };
    }
}
