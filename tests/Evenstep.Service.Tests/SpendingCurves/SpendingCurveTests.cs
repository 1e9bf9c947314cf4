using System.Text.Json;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.SpendingCurves;

/// <summary>The curve is answered over HTTP as the definitions say.</summary>
public sealed class SpendingCurveTests(Service service) : IClassFixture<Service>
{
    private const double LeastWork = 0.00004;
    private const string Path = "/v1/spending-curves";
    private const int Problems = 80;
    private const int FirstSeed = 510_000;

    /// <summary>Steps are rounded to three places.</summary>
    private const double StepTolerance = 0.0006;

    /// <summary>Steps closer than 1 % are merged.</summary>
    private const double Merged = 1.01;

    [Fact]
    public async Task Every_point_is_on_the_frontier_and_what_is_left_out_is_close_to_a_cheaper_one()
    {
        foreach (var seed in Enumerable.Range(FirstSeed, Problems))
        {
            var problem = RandomProblems.Make(seed);
            var answer = await ChartAsync(problem);
            var frontier = OracleSpending.Of(problem).Frontier();
            var points = answer.GetProperty("points").EnumerateArray().Select(PointOf).ToArray();

            Assert.Empty(AnswerShape.Differences("spending-curve", answer));
            Assert.All(points, point => Assert.Contains(frontier, one => one.Price == point.Price && IsStep(point.Step, one.LnStep)));
            Assert.All(frontier, one => Assert.Contains(points, point => point.Price <= one.Price && (point.Step ?? double.PositiveInfinity) < (Merged * Math.Exp(one.LnStep)) + StepTolerance
                || (point.Price <= one.Price && point.Step is null)));
            Assert.All(points.Zip(points.Skip(1)), pair => Assert.True(pair.First.Price < pair.Second.Price && !(pair.First.Step <= pair.Second.Step), $"seed {seed}"));
        }
    }

    [Fact]
    public async Task One_point_is_suggested_and_its_figures_are_those_of_its_items()
    {
        foreach (var seed in Enumerable.Range(FirstSeed, Problems))
        {
            var problem = RandomProblems.Make(seed);
            var points = (await ChartAsync(problem)).GetProperty("points").EnumerateArray().ToArray();

            Assert.Equal(points.Length == 0 ? 0 : 1, points.Count(point => point.GetProperty("suggested").GetBoolean()));
            Assert.All(points, point =>
            {
                var plan = Exhaustive.Assess(problem, [.. point.GetProperty("itemIds").EnumerateArray().Select(id => id.GetString()!)]);
                Assert.True(plan.IsAllowed, $"seed {seed}");
                Assert.Equal(plan.Price, point.GetProperty("totalPrice").GetDecimal());
                Assert.Equal(100 * plan.Figures.Kit.ServedShare, point.GetProperty("servedPercent").GetDouble(), tolerance: 0.006);
            });
        }
    }

    [Fact]
    public async Task Without_an_allowed_set_there_are_no_points_and_the_conflicts_are_those_of_the_recommendation()
    {
        var infeasible = 0;
        foreach (var seed in Enumerable.Range(FirstSeed, Problems))
        {
            var body = OracleBody.Of(RandomProblems.Make(seed)).ToJsonString();
            var answer = (await service.PostAsync(Path, body)).Json;
            var advice = (await service.PostAsync("/v1/recommendations", body)).Json;

            infeasible += answer.GetProperty("points").GetArrayLength() == 0 ? 1 : 0;
            Assert.Equal(answer.GetProperty("points").GetArrayLength() == 0, answer.GetProperty("outcome").GetString() == "infeasible");
            Assert.Equal(advice.GetProperty("outcome").GetString() == "infeasible", answer.GetProperty("outcome").GetString() == "infeasible");
            Assert.Equal(advice.GetProperty("conflicts").GetRawText(), answer.GetProperty("conflicts").GetRawText());
        }

        Assert.InRange(infeasible, 1, Problems - 1);
    }

    [Theory]
    [InlineData("0", "3", "With a budget of EUR 0.00 the largest step is ")]
    [InlineData("300", "0", "Without a purchase the largest step is ")]
    [InlineData("30", "1", "For EUR ")]
    public async Task What_is_said_of_the_last_point_goes_with_the_money(string budget, string maxPurchases, string beginning)
    {
        var answer = (await service.PostAsync(Path, $$"""
            { "telescopes": [ { "id": "capstan-152" } ], "catalogue": { "id": "demo" }, "limits": { "budget": {{budget}}, "maxPurchases": {{maxPurchases}} } }
            """)).Json;

        var note = answer.GetProperty("notes").EnumerateArray().Single(note => note.GetProperty("code").GetString() == "suggested-point");
        Assert.True(answer.GetProperty("points").EnumerateArray().Last().GetProperty("suggested").GetBoolean());
        Assert.StartsWith(beginning, note.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Almost_no_work_ends_in_a_refusal_or_an_honest_answer()
    {
        var (answer, refusals) = (await HurriedAsync(LeastWork), 0);
        for (var limit = LeastWork; answer.Status == 503; limit *= 1.2, refusals++)
        {
            answer = await HurriedAsync(limit);
        }

        Assert.True(refusals > 0);
        Assert.Equal(200, answer.Status);
        Assert.Equal("best-found", answer.Json.GetProperty("outcome").GetString());
        Assert.False(answer.Json.GetProperty("solver").GetProperty("proved").GetBoolean());
        Assert.Contains(answer.Json.GetProperty("notes").EnumerateArray(), note => note.GetProperty("code").GetString() is "curve-not-proved" or "curve-proved-up-to");
    }

    private async Task<Answer> HurriedAsync(double limit)
    {
        await using var hurried = service.WithWebHostBuilder(host => host.UseSetting("Evenstep:WorkLimit", limit.ToString("R", System.Globalization.CultureInfo.InvariantCulture)));
        using var client = hurried.CreateClient();
        using var content = new StringContent(Repository.Example("spending-curve-spectacles"), System.Text.Encoding.UTF8, "application/json");
        using var response = await client.PostAsync(new Uri(Path, UriKind.Relative), content);
        return await Answer.OfAsync(response);
    }

    private async Task<JsonElement> ChartAsync(OracleProblem problem)
    {
        var answer = await service.PostAsync(Path, OracleBody.Of(problem).ToJsonString());
        Assert.True(answer.Status == 200, answer.Body);
        return answer.Json;
    }

    private static (decimal Price, double? Step) PointOf(JsonElement point) => (
        point.GetProperty("totalPrice").GetDecimal(),
        point.GetProperty("largestStep") is { ValueKind: JsonValueKind.Number } step ? step.GetDouble() : null);

    /// <summary>Without a usable view there is no step to show.</summary>
    private static bool IsStep(double? shown, double lnStep) => shown is null || Math.Abs(shown.Value - Math.Exp(lnStep)) <= StepTolerance;
}
