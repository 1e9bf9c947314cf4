using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Features.Choices;

/// <summary>Makes the choices of a request that is understood.</summary>
internal sealed class ChoicesHandler(RefereedPlanner planner, WritingGate answers, ServiceMeter meter)
{
    public async Task<FinishedAnswer> AnswerAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, Representation representation, CancellationToken cancellationToken)
    {
        var solved = await planner.ChooseAsync(new PlanningCase(asked.Problem, asked.Catalogue, body), cancellationToken);
        meter.Solved(solved.Took);
        var (language, outcome) = (representation.Language, OutcomeOf(solved));
        return await answers.WriteAsync(
            budget => representation.Form == AnswerFormat.Picture
                ? FinishedAnswer.Of(ChoicesScene.Of(asked, solved, budget), language, outcome, solved.Took)
                : FinishedAnswer.Of(
                    ChoicesWriter.Write(asked, solved, outcome, budget), ChoicesJson.In(language).ChoicesAnswer, language, outcome, solved.Took),
            cancellationToken);
    }

    private static Outcome OutcomeOf(SolvedChoices solved) =>
        solved.Found.All.IsEmpty ? Outcome.Infeasible
        : solved.Found.AreProved ? Outcome.Optimal : Outcome.BestFound;
}
