using System.Text.Json.Nodes;

namespace Evenstep.Service.Tests.Recommendations;

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
        var truth = (await patient.PostAsync("/v1/recommendations", body.ToJsonString())).Json;
        Assert.Empty(truth.GetProperty("conflicts").GetProperty("undecided").EnumerateArray());

        foreach (var limit in WorkLimits)
        {
            await using var hurried = new Service(null, ("Evenstep:WorkLimit", limit));
            var answer = await hurried.PostAsync("/v1/recommendations", body.ToJsonString());
            if (answer.Status == 503)
            {
                Assert.EndsWith("/work-limit", answer.Json.GetProperty("type").GetString(), StringComparison.Ordinal);
                continue;
            }

            Assert.Equal("infeasible", answer.Json.GetProperty("outcome").GetString());
            var conflicts = answer.Json.GetProperty("conflicts");
            string[] undecided = [.. conflicts.GetProperty("undecided").EnumerateArray().Select(one => one.GetString()!)];
            Assert.Equal(undecided.Length > 0, answer.Json.GetProperty("solver").GetProperty("limit").GetString() is not null);
            foreach (var known in conflicts.GetProperty("nearest").EnumerateObject().Where(one => one.Name != "mustFrame" && !undecided.Contains(one.Name)))
            {
                Assert.Equal(truth.GetProperty("conflicts").GetProperty("nearest").GetProperty(known.Name).GetRawText(), known.Value.GetRawText());
            }

            if (undecided.Length > 0)
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
            cut += answer.Status == 503 || answer.Json.GetProperty("outcome").GetString() == "best-found" ? 1 : 0;
            if (answer.Status == 200)
            {
                var solver = answer.Json.GetProperty("solver");
                Assert.Equal(solver.GetProperty("proved").GetBoolean() ? null : "work", solver.GetProperty("limit").GetString());
            }
        }

        Assert.True(cut > 0, "no limit was low enough");
    }
}
