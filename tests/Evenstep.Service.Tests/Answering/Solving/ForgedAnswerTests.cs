using Evenstep.Planning.Solving;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Tests.Answering.Metrics;
using Microsoft.Extensions.DependencyInjection;

namespace Evenstep.Service.Tests.Answering.Solving;

/// <summary>Where a solver gives a wrong answer the caller gets an error, and never the answer.</summary>
public sealed class ForgedAnswerTests
{
    [Fact]
    public async Task A_wrong_plan_is_an_error() => await AssertRefusedAsync("/v1/recommendations", "recommendation-spectacles", services =>
        services.AddSingleton<PlanSolver>((problem, budget) =>
        {
            var plan = Planner.Solve(problem, budget);
            return plan with { Purchases = plan.Purchases.RemoveAt(0) };
        }));

    [Fact]
    public async Task A_wrong_curve_is_an_error() => await AssertRefusedAsync("/v1/spending-curves", "buying-path-spectacles", services =>
        services.AddSingleton<SpendingSolver>((problem, budget) =>
        {
            var frontier = SpendingSearch.Solve(problem, budget);
            return frontier with { Points = frontier.Points.SetItem(0, frontier.Points[0] with { TotalPrice = 1 }) };
        }));

    [Fact]
    public async Task A_wrong_path_is_an_error() => await AssertRefusedAsync("/v1/buying-paths", "buying-path-spectacles", services =>
        services.AddSingleton<PathSolver>((problem, budget) =>
        {
            var path = BuyingPathSearch.Solve(problem, budget);
            return path with { Steps = path.Steps.SetItem(0, path.Steps[0] with { Loss = 9 }) };
        }));

    private static async Task AssertRefusedAsync(string path, string example, Action<IServiceCollection> forge)
    {
        await using var service = new WatchedService(forge);

        var answer = await service.PostAsync(path, Repository.Example(example));

        Assert.Equal(500, answer.Status);
        Assert.EndsWith("/internal-error", answer.Problem.Type, StringComparison.Ordinal);
    }
}
