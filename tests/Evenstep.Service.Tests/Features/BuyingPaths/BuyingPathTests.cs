using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.BuyingPaths;

/// <summary>The no-regret path is answered over HTTP as the definitions say.</summary>
public sealed class BuyingPathTests(Service service) : IClassFixture<Service>
{
    private const double LeastWork = 0.00004;
    private const string Path = "/v1/buying-paths";
    private const int Problems = 60;
    private const int FirstSeed = 530_000;

    /// <summary>Steps are rounded to three places.</summary>
    private const double StepTolerance = 0.0006;

    /// <summary>Percentages are rounded to two places.</summary>
    private const double PercentTolerance = 0.006;

    /// <summary>A step that is enough counts as such.</summary>
    private const double UsualEnoughStep = 1.5;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(FirstSeed, Problems)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task The_path_is_the_best_and_so_are_its_figures(int seed)
    {
        var problem = RandomProblems.Make(seed);
        var answer = await LeadAsync(problem);
        var best = OraclePaths.Best(problem);
        var steps = answer.Steps;

        Assert.Equal(OutcomeOf(best), answer.Outcome);
        if (best.Count == 0)
        {
            Assert.Empty(steps);
            Assert.Null(answer.GreatestLossPercent);
            Assert.NotNull(answer.Conflicts);
            return;
        }

        Assert.Contains(best, one => one.Ids.SequenceEqual(steps.Select(step => step.ItemId)));
        Assert.Equal(best[0].Price, answer.TotalPrice);
        Assert.Equal(100 * best[0].GreatestLoss, answer.GreatestLossPercent!.Value, tolerance: PercentTolerance);
        Assert.Equal(100 * OraclePaths.LeastLoss(problem)!.Value, answer.LeastGreatestLossPercent!.Value, tolerance: PercentTolerance);
        AssertSteps(problem, steps);
    }

    [Fact]
    public void Among_the_problems_is_one_of_every_outcome() => Assert.Equal(
        ["infeasible", "nothing-worthwhile", "optimal"],
        Enumerable.Range(FirstSeed, Problems).Select(seed => OutcomeOf(OraclePaths.Best(RandomProblems.Make(seed)))).Distinct().Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task It_is_compared_with_the_spending_curve_of_the_same_request(int seed)
    {
        var body = OracleBody.Of(RandomProblems.Make(seed)).ToJsonString();
        var path = (await service.PostAsync(Path, body)).As<BuyingPath>();
        var curve = (await service.PostAsync("/v1/spending-curves", body)).As<SpendingCurve>();

        Assert.Equal(Reading.Text(curve.Points), Reading.Text(path.ComparedWith));
        Assert.Equal(Reading.Text(curve.Conflicts), Reading.Text(path.Conflicts));
    }

    [Fact]
    public async Task A_work_limit_of_almost_nothing_ends_in_a_path_that_is_called_best_found()
    {
        var (answer, refusals) = (await HurriedAsync(LeastWork), 0);
        for (var limit = LeastWork; answer.Status == 503; limit *= 1.2, refusals++)
        {
            answer = await HurriedAsync(limit);
        }

        Assert.True(refusals > 0);
        Assert.Equal(200, answer.Status);
        var path = answer.As<BuyingPath>();
        Assert.Equal(("best-found", false), (path.Outcome, path.Solver.Proved));
        Assert.Contains(path.Notes, note => note.Code == "path-not-proved");
    }

    private async Task<Answer> HurriedAsync(double limit)
    {
        await using var hurried =
            service.WithWebHostBuilder(host => host.UseSetting("Evenstep:WorkLimit", limit.ToString("R", System.Globalization.CultureInfo.InvariantCulture)));
        using var client = hurried.CreateClient();
        using var content = new StringContent(Repository.Example("buying-path-spectacles"), System.Text.Encoding.UTF8, "application/json");
        using var response = await client.PostAsync(new Uri(Path, UriKind.Relative), content);
        return await Answer.OfAsync(response);
    }

    private static string OutcomeOf(IReadOnlyList<OraclePath> best) =>
        best.Count == 0 ? "infeasible" : best[0].Ids.Count == 0 ? "nothing-worthwhile" : "optimal";

    private static void AssertSteps(OracleProblem problem, IReadOnlyList<BuyingStep> steps)
    {
        var spending = OracleSpending.Of(problem);
        var lnOfNothing = Exhaustive.Assess(problem, []).Figures.Kit.LnLargestStep;
        var spent = 0m;
        foreach (var step in steps)
        {
            spent += step.Price;
            Assert.Equal(spent, step.TotalPriceSoFar);
            if (step.BestForTheMoney is { } best)
            {
                Assert.Equal(
                    Math.Exp(spending.LeastLnStep(spent)!.Value), Math.Max(best, problem.Preferences.EnoughStep ?? UsualEnoughStep), tolerance: StepTolerance);
            }
            else
            {
                Assert.True(spending.LeastLnStep(spent) is null || spending.LeastLnStep(spent) >= lnOfNothing - StepTolerance);
            }
        }
    }

    private async Task<BuyingPath> LeadAsync(OracleProblem problem)
    {
        var answer = await service.PostAsync(Path, OracleBody.Of(problem).ToJsonString());
        Assert.True(answer.Status == 200, answer.Body);
        Assert.Empty(AnswerShape.Differences("buying-path", answer.Json));
        return answer.As<BuyingPath>();
    }
}
