using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Solving.Model;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>What happens when the work ends early.</summary>
public class WorkTests
{
    private const double AlmostNoWork = 2e-6;

    private const double FigureTolerance = 1e-6;

    [Fact]
    public void When_the_work_ends_early_the_answer_is_allowed_and_its_bound_is_true()
    {
        var cut = 0;
        foreach (var seed in Enumerable.Range(200_000, 300))
        {
            var problem = Bridge.ToProblem(RandomProblems.Make(seed));
            var proved = ModelEngine.Solve(problem, new WorkBudget(Comparison.WorkLimit));
            if (proved.Values is null || SolveShort(problem) is not { Outcome: Outcome.BestFound } plan)
            {
                continue;
            }

            cut++;
            Assert.Empty(Referee.FaultsOf(problem, plan));
            Assert.True(plan.Values!.LnBound <= proved.Values.LnLeastLargestStep + FigureTolerance, $"seed {seed}");
            Assert.True(plan.Values.LnLeastLargestStep >= proved.Values.LnLeastLargestStep - FigureTolerance, $"seed {seed}");
        }

        Assert.True(cut > 20, $"only {cut} problems were cut short");
    }

    [Fact]
    public void A_caller_who_has_given_up_gets_no_plan()
    {
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        var problem = Bridge.ToProblem(RandomProblems.Make(1));
        Assert.Throws<OperationCanceledException>(() => Planner.Solve(problem, new WorkBudget(Comparison.WorkLimit, cancelled.Token)));
        Assert.Throws<OperationCanceledException>(() => ModelEngine.Solve(problem, new WorkBudget(Comparison.WorkLimit, cancelled.Token)));
    }

    private static Plan? SolveShort(PurchaseProblem problem)
    {
        try
        {
            return ModelEngine.Solve(problem, new WorkBudget(AlmostNoWork));
        }
        catch (WorkLimitException)
        {
            return null;
        }
    }
}
