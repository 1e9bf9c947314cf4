using System.Text.Json.Nodes;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.SpendingCurves;

/// <summary>The curve is answered over HTTP as the definitions say.</summary>
public sealed class SpendingCurveTests(Service service) : IClassFixture<Service>
{
    private const double LeastWork = 0.00004;
    private const string Path = "/v1/spending-curves";
    private const int Problems = 80;
    private const int FirstSeed = 510_000;

    /// <summary>Steps are rounded to three places.</summary>
    private const double StepTolerance = 0.0006;

    private const double UsualEnoughStep = 1.5;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(FirstSeed, Problems)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task The_points_are_those_of_the_frontier(int seed)
    {
        var problem = RandomProblems.Make(seed);
        var answer = await ChartAsync(problem);
        var frontier = OracleSpending.Of(problem).Frontier().ToArray();
        var points = answer.Points.Select(point => (Price: point.TotalPrice, Step: point.LargestStep)).ToArray();

        Assert.Equal(frontier.Select(one => one.Price), points.Select(point => point.Price));
        Assert.All(points.Zip(frontier), pair => Assert.True(IsStep(Counted(pair.First.Step, problem), pair.Second.LnStep), $"{pair}"));
        Assert.All(points.Zip(points.Skip(1)), pair => Assert.True(pair.First.Price < pair.Second.Price && !(pair.First.Step <= pair.Second.Step)));
    }

    [Theory]
    [InlineData(Path)]
    [InlineData("/v1/buying-paths")]
    public async Task A_telescope_that_nothing_serves_is_named(string path)
    {
        var answer = await service.PostAsync(path, """
            {"telescopes":[{"apertureMm":203,"focalLengthMm":1218,"focuserBarrel":"2in"},
                           {"name":"Finder","apertureMm":60,"focalLengthMm":700,"focuserBarrel":"0.965in"}],
             "limits":{"budget":300},
             "catalogue":{"currency":"EUR","items":[
               {"id":"a","kind":"eyepiece","focalLengthMm":12,"apparentFieldDeg":60,"eyeReliefMm":16,"barrel":"1.25in","price":80}]}}
            """);

        var notes = JsonNode.Parse(answer.Body)!["notes"]!.AsArray();
        Assert.Equal("Finder", $"{notes.Single(note => $"{note!["code"]}" == "telescope-not-served")!["values"]!["telescope"]}");
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task One_point_is_suggested_and_its_figures_are_those_of_its_items(int seed)
    {
        var problem = RandomProblems.Make(seed);
        var points = (await ChartAsync(problem)).Points;

        Assert.Equal(points.Count == 0 ? 0 : 1, points.Count(point => point.Suggested));
        Assert.All(points, point =>
        {
            var plan = Exhaustive.Assess(problem, [.. point.ItemIds]);
            Assert.True(plan.IsAllowed);
            Assert.Equal(plan.Price, point.TotalPrice);
            Assert.Equal(100 * plan.Figures.Counting.ServedShare, point.ServedPercent, tolerance: 0.006);
        });
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task Without_an_allowed_set_there_are_no_points_and_the_conflicts_are_those_of_the_recommendation(int seed)
    {
        var body = OracleBody.Of(RandomProblems.Make(seed)).ToJsonString();
        var answer = (await service.PostAsync(Path, body)).As<SpendingCurve>();
        var advice = (await service.PostAsync("/v1/recommendations", body)).As<Recommendation>();

        Assert.Equal(IsInfeasible(seed), answer.Points.Count == 0);
        Assert.Equal(answer.Points.Count == 0, answer.Outcome == "infeasible");
        Assert.Equal(advice.Outcome == "infeasible", answer.Outcome == "infeasible");
        Assert.Equal(Reading.Text(advice.Conflicts), Reading.Text(answer.Conflicts));
    }

    [Fact]
    public void Some_of_the_problems_are_infeasible() => Assert.InRange(Enumerable.Range(FirstSeed, Problems).Count(IsInfeasible), 1, Problems - 1);

    [Theory]
    [InlineData("0", "3", "With a budget of EUR 0.00 the widest jump is from ")]
    [InlineData("300", "0", "Without a purchase the widest jump is from ")]
    [InlineData("30", "1", "For EUR ")]
    public async Task What_is_said_of_the_last_point_goes_with_the_money(string budget, string maxPurchases, string beginning)
    {
        var answer = (await service.PostAsync(Path, $$"""
            { "telescopes": [ { "id": "capstan-152" } ], "catalogue": { "id": "demo" }, "limits": { "budget": {{budget}}, "maxPurchases": {{maxPurchases}} } }
            """)).As<SpendingCurve>();

        var note = answer.Notes.Single(note => note.Code == "suggested-point");
        Assert.True(answer.Points[^1].Suggested);
        Assert.StartsWith(beginning, note.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en", "For EUR 17.90 there is one power, 60x, where powers from 22x to 86x are useful. Beyond that, ")]
    [InlineData("de", "Für 17,90 EUR gibt es eine Vergrößerung, 60-fach; sinnvoll sind 22-fach bis 86-fach. Darüber hinaus ")]
    public async Task Of_a_single_eyepiece_no_step_between_powers_is_told(string language, string beginning)
    {
        var answer = (await service.SendAsync(
            HttpMethod.Post,
            Path,
            """
            {
              "telescopes": [ { "apertureMm": 60, "focalLengthMm": 700, "focuserBarrel": "1.25in" } ],
              "catalogue": { "id": "demo" }, "limits": { "budget": 60 }
            }
            """,
            "application/json",
            [("Accept-Language", language)])).As<SpendingCurve>();

        Assert.StartsWith(beginning, answer.Notes.Single(note => note.Code == "suggested-point").Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_work_limit_of_almost_nothing_ends_in_a_refusal_or_a_curve_that_is_called_best_found()
    {
        var (answer, refusals) = (await HurriedAsync(LeastWork), 0);
        for (var limit = LeastWork; answer.Status == 503; limit *= 1.2, refusals++)
        {
            answer = await HurriedAsync(limit);
        }

        Assert.True(refusals > 0);
        Assert.Equal(200, answer.Status);
        var curve = answer.As<SpendingCurve>();
        Assert.Equal(("best-found", false), (curve.Outcome, curve.Solver.Proved));
        Assert.Contains(curve.Notes, note => note.Code is "curve-not-proved" or "curve-proved-up-to");
    }

    private async Task<Answer> HurriedAsync(double limit)
    {
        await using var hurried =
            service.WithWebHostBuilder(host => host.UseSetting("Evenstep:WorkLimit", limit.ToString("R", System.Globalization.CultureInfo.InvariantCulture)));
        using var client = hurried.CreateClient();
        using var content = new StringContent(Repository.Example("spending-curve-spectacles"), System.Text.Encoding.UTF8, "application/json");
        using var response = await client.PostAsync(new Uri(Path, UriKind.Relative), content);
        return await Answer.OfAsync(response);
    }

    private async Task<SpendingCurve> ChartAsync(OracleProblem problem)
    {
        var answer = await service.PostAsync(Path, OracleBody.Of(problem).ToJsonString());
        Assert.True(answer.Status == 200, answer.Body);
        Assert.Empty(AnswerShape.Differences("spending-curve", answer.Json));
        return answer.As<SpendingCurve>();
    }

    /// <summary>A step that is enough counts as such.</summary>
    private static double? Counted(double? step, OracleProblem problem) =>
        step is { } ratio ? Math.Max(ratio, problem.Preferences.EnoughStep ?? UsualEnoughStep) : null;

    private static bool IsInfeasible(int seed) => !OracleSpending.Of(RandomProblems.Make(seed)).Frontier().Any();

    /// <summary>Without a usable view there is no step to show.</summary>
    private static bool IsStep(double? shown, double lnStep) => shown is null || Math.Abs(shown.Value - Math.Exp(lnStep)) <= StepTolerance;
}
