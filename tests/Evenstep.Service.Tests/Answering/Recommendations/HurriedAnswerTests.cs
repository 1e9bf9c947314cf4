using System.Text.Json.Nodes;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Answering.Recommendations;

/// <summary>What is said over HTTP where the work ends early.</summary>
public sealed class HurriedAnswerTests
{
    private static readonly string[] WorkLimits = ["0.00000001", "0.000001", "0.00001", "0.0001", "0.001"];

    [Fact]
    public async Task What_is_not_decided_of_an_infeasible_request_is_told_as_undecided()
    {
        var body = JsonNode.Parse(Repository.Example("recommendation-spectacles"))!;
        body["preferences"]!["mustFrame"]![0]!["widthDeg"] = 19;
        await using var patient = new Service(null, ("Evenstep:WorkLimit", "60"));
        var truth = (await patient.PostAsync("/v1/recommendations", body.ToJsonString())).As<Recommendation>();
        Assert.Empty(truth.Conflicts!.Undecided);

        foreach (var limit in WorkLimits)
        {
            await using var hurried = new Service(null, ("Evenstep:WorkLimit", limit));
            var answer = await hurried.PostAsync("/v1/recommendations", body.ToJsonString());
            if (answer.Status == 503)
            {
                Assert.EndsWith("/work-limit", answer.Problem.Type, StringComparison.Ordinal);
                continue;
            }

            var advice = answer.As<Recommendation>();
            var undecided = advice.Conflicts!.Undecided;
            Assert.Equal("infeasible", advice.Outcome);
            Assert.Equal(undecided.Count > 0, advice.Solver.Limit is not null);
            Assert.Equal(DecidedOf(truth, undecided), DecidedOf(advice, undecided));

            if (undecided.Count > 0)
            {
                Assert.DoesNotContain("no-single-change-helps", answer.Body, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task A_plan_that_is_not_proved_is_called_best_found_and_names_the_limit()
    {
        var cut = 0;
        foreach (var limit in WorkLimits)
        {
            await using var hurried = new Service(null, ("Evenstep:WorkLimit", limit));
            var answer = await hurried.PostAsync("/v1/recommendations", Repository.Example("recommendation-spectacles"));
            cut += answer.Status == 503 || answer.As<Recommendation>().Outcome == "best-found" ? 1 : 0;
            if (answer.Status == 200)
            {
                var solver = answer.As<Recommendation>().Solver;
                Assert.Equal(solver.Proved ? null : "work", solver.Limit);
            }
        }

        Assert.True(cut > 0, "no limit was low enough");
    }

    /// <summary>The nearest values by name, but for the widths and for what is not decided.</summary>
    private static IEnumerable<string> DecidedOf(Recommendation answer, IReadOnlyList<string> undecided) =>
        JsonNode.Parse(Reading.Text(answer.Conflicts!.Nearest))!.AsObject()
            .Where(one => one.Key != "mustFrame" && !undecided.Contains(one.Key)).Select(one => $"{one.Key} {one.Value?.ToJsonString()}");
}
