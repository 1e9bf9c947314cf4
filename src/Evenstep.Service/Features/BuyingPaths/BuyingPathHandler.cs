using System.Diagnostics;
using System.Text;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Solving;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Features.BuyingPaths;

/// <summary>A path that the referee found no fault in.</summary>
/// <param name="Path">The path.</param>
/// <param name="Took">How long it took to find.</param>
internal sealed record SolvedPath(BuyingPath Path, TimeSpan Took);

/// <summary>Makes the buying path of a request that is understood, and lets the referee check it: rather no answer than a wrong one.</summary>
internal sealed partial class BuyingPathHandler(
    PathSolver solve, SolveGate gate, WritingGate answers, WorkLimits limits, ServiceMeter meter, ILogger<BuyingPathHandler> logger)
{
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found.</exception>
    /// <exception cref="RefereeException">The path is faulty: a mistake of ours, logged in full.</exception>
    public async Task<FinishedAnswer> LeadAsync(
        RecommendationAsked asked, ReadOnlyMemory<byte> body, Representation representation, CancellationToken cancellationToken)
    {
        var led = await gate.RunAsync(slot => Solve(asked, body, slot.Budget(limits)), cancellationToken);
        meter.Solved(led.Took);
        return await answers.WriteAsync(
            budget =>
            {
                var answer = BuyingPathWriter.Write(asked, led, budget);
                return FinishedAnswer.Of(
                    answer, BuyingPathJson.In(representation.Language).BuyingPathAnswer, representation.Language, answer.Outcome, led.Took);
            },
            cancellationToken);
    }

    private SolvedPath Solve(RecommendationAsked asked, ReadOnlyMemory<byte> body, WorkBudget budget)
    {
        var started = Stopwatch.GetTimestamp();
        var path = solve(asked.Problem, budget);
        var took = Stopwatch.GetElapsedTime(started);
        var faults = string.Join(' ', BuyingPathReferee.FaultsOf(path));
        if (faults.Length > 0)
        {
            LogObjection(faults, Encoding.UTF8.GetString(body.Span));
            throw new RefereeException($"The referee found fault with a buying path: {faults}");
        }

        return new SolvedPath(path, took);
    }

    [LoggerMessage(LogLevel.Critical, "The referee found fault with a buying path. Faults: {Faults} Request: {Body}")]
    private partial void LogObjection(string faults, string body);
}
