using Evenstep.Planning.Budgets;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Makes the answer to a request that is understood.</summary>
internal sealed class RecommendationHandler(RefereedPlanner planner, WritingGate answers, SampleQueue samples, ServiceMeter meter)
{
    /// <summary>Where recommendations are asked for, below the version.</summary>
    public const string Route = "/recommendations";

    public async Task<FinishedAnswer> AnswerAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, Representation representation, CancellationToken cancellationToken)
    {
        var solved = await SolveAsync(asked, body, cancellationToken);
        return await answers.WriteAsync(budget => Finish(asked, solved, representation, budget), cancellationToken);
    }

    /// <summary>The plan for a request; offered for a certificate in the background, if it has none and no batch asks.</summary>
    public async Task<Solved> SolveAsync(RecommendationAsked asked, ReadOnlyMemory<byte> body, CancellationToken cancellationToken)
    {
        var planning = new PlanningCase(asked.Problem, asked.Catalogue, body);
        var wanted = new FurtherSolves(asked.Certify, asked.IfUnavailable, asked.HoldsWhile ? asked.SeeingArcsec : null);
        var solved = await planner.SolveAsync(planning, wanted, cancellationToken);
        meter.Solved(solved.Took);
        // While a batch runs no processor is left for a certificate.
        if (solved.Certified is null && SolveClaim.Current.Priority == SolvePriority.Single)
        {
            samples.Offer(planning, solved.Plan);
        }

        return solved;
    }

    /// <summary>Writes a plan out.</summary>
    public static FinishedAnswer Finish(RecommendationAsked asked, Solved solved, Representation representation, WorkBudget budget) =>
        representation.Form == AnswerFormat.Picture
        ? FinishedAnswer.Of(RecommendationScene.Of(asked, solved.Plan, budget), representation.Language, solved.Plan.Outcome, solved.Took)
        : FinishedAnswer.Of(
            RecommendationWriter.Write(asked, solved, budget),
            RecommendationJson.In(representation.Language).RecommendationAnswer,
            representation.Language,
            solved.Plan.Outcome,
            solved.Took);
}
