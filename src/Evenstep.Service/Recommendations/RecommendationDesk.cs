using System.Text.Json;
using Evenstep.Planning.Advice;
using Evenstep.Service.Caching;
using Evenstep.Service.Certifying;
using Evenstep.Service.Metrics;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Recommendations;

/// <summary>Makes the answer to a request that is understood.</summary>
internal sealed class RecommendationDesk(RefereedPlanner planner, SampleQueue samples, ServiceMeter meter)
{
    private const string ContentType = "application/json; charset=utf-8";

    public async Task<FinishedAnswer> AnswerAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, Language language, CancellationToken gone)
    {
        var planning = new PlanningCase(asked.Problem, asked.Catalogue, body);
        var solved = asked.IfUnavailable
            ? await planner.SolveWithAlternativesAsync(planning, asked.Certify, gone)
            : await planner.SolveAsync(planning, asked.Certify, gone);
        meter.Solved(solved.Took);
        if (solved.Certified is null)
        {
            samples.Offer(planning, solved.Plan);
        }

        return Finish(asked, solved, language);
    }

    /// <summary>Writes a plan out.</summary>
    public static FinishedAnswer Finish(RecommendationAsked asked, Solved solved, Language language)
    {
        var answer = RecommendationWriter.Write(asked, solved, Explanation.Of(asked.Problem, solved.Plan));
        return new FinishedAnswer
        {
            Body = JsonSerializer.SerializeToUtf8Bytes(answer, AnswerJson.In(language).RecommendationAnswer),
            ContentType = ContentType,
            Language = language,
            Outcome = solved.Plan.Outcome,
            Took = solved.Took,
        };
    }
}
