using Evenstep.Planning.Budgets;
using Evenstep.Service.Caching;
using Evenstep.Service.Certifying;
using Evenstep.Service.Door;
using Evenstep.Service.Metrics;
using Evenstep.Service.Scheduling;

namespace Evenstep.Service.Recommendations;

/// <summary>Makes the answer to a request that is understood.</summary>
internal sealed class RecommendationDesk(RefereedPlanner planner, AnswerDesk answers, SampleQueue samples, ServiceMeter meter)
{
    public async Task<FinishedAnswer> AnswerAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, Manner manner, CancellationToken gone)
    {
        var solved = await SolveAsync(asked, body, gone);
        return await answers.WriteAsync(budget => Finish(asked, solved, manner, budget), gone);
    }

    /// <summary>The plan for a request; offered for a certificate in the background, if it has none and no batch asks.</summary>
    public async Task<Solved> SolveAsync(RecommendationAsked asked, ReadOnlyMemory<byte> body, CancellationToken gone)
    {
        var planning = new PlanningCase(asked.Problem, asked.Catalogue, body);
        var solved = asked.IfUnavailable
            ? await planner.SolveWithAlternativesAsync(planning, asked.Certify, gone)
            : await planner.SolveAsync(planning, asked.Certify, gone);
        meter.Solved(solved.Took);
        // While a batch runs no processor is left for a certificate.
        if (solved.Certified is null && SolveClaim.Current.Priority == SolvePriority.Single)
        {
            samples.Offer(planning, solved.Plan);
        }

        return solved;
    }

    /// <summary>Writes a plan out.</summary>
    public static FinishedAnswer Finish(RecommendationAsked asked, Solved solved, Manner manner, WorkBudget budget) => manner.Form == AnswerForm.Picture
        ? FinishedAnswer.Of(RecommendationScene.Of(asked, solved.Plan, budget), manner.Language, solved.Plan.Outcome, solved.Took)
        : FinishedAnswer.Of(
            RecommendationWriter.Write(asked, solved, budget),
            AnswerJson.In(manner.Language).RecommendationAnswer,
            manner.Language,
            solved.Plan.Outcome,
            solved.Took);
}
