using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Answering.Spending;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Features.SpendingCurves;

/// <summary>Makes the spending curve of a request that is understood.</summary>
internal sealed class SpendingCurveHandler(RefereedSpending spending, RecommendationHandler recommendations, WritingGate answers, ServiceMeter meter)
{
    public async Task<FinishedAnswer> ChartAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, Representation representation, CancellationToken cancellationToken)
    {
        var charted = await spending.SolveAsync(new PlanningCase(asked.Problem, asked.Catalogue, body), cancellationToken);
        meter.Solved(charted.Took);
        var infeasible = charted.Frontier.Points.IsEmpty ? await ConflictingAsync(asked, body, cancellationToken) : null;
        return await answers.WriteAsync(
            budget =>
            {
                var answer = SpendingCurveWriter.Write(asked, charted, infeasible, budget);
                return FinishedAnswer.Of(
                    answer, SpendingCurveJson.In(representation.Language).SpendingCurveAnswer, representation.Language, answer.Outcome, charted.Took);
            },
            cancellationToken);
    }

    /// <summary>The plan that says why no set is allowed: the second engine must have found none either.</summary>
    private async Task<Solved> ConflictingAsync(RecommendationAsked asked, ReadOnlyMemory<byte> body, CancellationToken cancellationToken)
    {
        var solved = await recommendations.SolveAsync(asked with { Certify = false, IfUnavailable = false, HoldsWhile = false }, body, cancellationToken);
        return solved.Plan.Outcome == Outcome.Infeasible
            ? solved
            : throw new RefereeException("No set is said to be allowed, and yet there is a plan.");
    }
}
