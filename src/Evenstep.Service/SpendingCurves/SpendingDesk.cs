using Evenstep.Planning.Purchases;
using Evenstep.Service.Caching;
using Evenstep.Service.Door;
using Evenstep.Service.Metrics;
using Evenstep.Service.Recommendations;

namespace Evenstep.Service.SpendingCurves;

/// <summary>Makes the spending curve of a request that is understood.</summary>
internal sealed class SpendingDesk(RefereedSpending spending, RecommendationDesk recommendations, AnswerDesk answers, ServiceMeter meter)
{
    public async Task<FinishedAnswer> ChartAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, Manner manner, CancellationToken gone)
    {
        var charted = await spending.SolveAsync(new PlanningCase(asked.Problem, asked.Catalogue, body), gone);
        meter.Solved(charted.Took);
        var infeasible = charted.Frontier.Points.IsEmpty ? await ConflictingAsync(asked, body, gone) : null;
        return await answers.WriteAsync(
            budget =>
            {
                var answer = SpendingCurveWriter.Write(asked, charted, infeasible, budget);
                return FinishedAnswer.Of(answer, AnswerJson.In(manner.Language).SpendingCurveAnswer, manner.Language, answer.Outcome, charted.Took);
            },
            gone);
    }

    /// <summary>The plan that says why no set is allowed: the second engine must have found none either.</summary>
    private async Task<Solved> ConflictingAsync(RecommendationAsked asked, ReadOnlyMemory<byte> body, CancellationToken gone)
    {
        var solved = await recommendations.SolveAsync(asked with { Certify = false, IfUnavailable = false }, body, gone);
        return solved.Plan.Outcome == Outcome.Infeasible
            ? solved
            : throw new RefereeException("No set is said to be allowed, and yet there is a plan.");
    }
}
