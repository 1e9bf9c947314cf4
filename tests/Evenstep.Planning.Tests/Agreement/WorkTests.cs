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
            Assert.True(plan.Values!.Bound.Ln <= proved.Values.LeastLargestStep.Ln + FigureTolerance, $"seed {seed}");
            Assert.True(plan.Values.LeastLargestStep.Ln >= proved.Values.LeastLargestStep.Ln - FigureTolerance, $"seed {seed}");
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

    /// <summary>Wherever the work stands when its caller gives up, it ends with that very look.</summary>
    [Fact]
    public void Given_up_at_any_look_the_work_goes_no_further()
    {
        var problem = Bridge.ToProblem(RandomProblems.Make(200_010));
        var looks = 0;
        _ = ModelEngine.Solve(problem, new WorkBudget(WorkLimits.Usual, () => looks++));
        Assert.True(looks > 10, $"only {looks} looks");
        for (var last = 1; last <= looks; last++)
        {
            using var giveUp = new CancellationTokenSource();
            var seen = 0;
            var budget = new WorkBudget(WorkLimits.Usual, () => CancelAt(++seen, last, giveUp), giveUp.Token);
            Assert.Throws<OperationCanceledException>(() => ModelEngine.Solve(problem, budget));
            Assert.Equal(last, seen);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e-5)]
    [InlineData(1e-4)]
    [InlineData(1e-3)]
    [InlineData(3e-3)]
    [InlineData(1e-2)]
    public void What_is_said_of_infeasible_problems_is_true_at_any_work_limit(double units)
    {
        var infeasible = 0;
        foreach (var seed in Enumerable.Range(200_000, 300))
        {
            var problem = Bridge.ToProblem(RandomProblems.Make(seed));
            if (ModelEngine.Solve(problem, new WorkBudget(Comparison.WorkLimit)).Conflicts is { } whole)
            {
                infeasible++;
                AssertTrue(whole, SolveShort(problem, units)?.Conflicts, $"seed {seed}");
            }
        }

        Assert.True(infeasible > 10, $"only {infeasible} were infeasible");
    }

    private static void AssertTrue(Conflicts whole, Conflicts? cut, string seed)
    {
        if (cut is null)
        {
            return;
        }

        Assert.Equal(whole.NoCandidates.AsEnumerable(), cut.NoCandidates);
        Assert.True(cut.IsTogetherDecided ? cut.Together.SequenceEqual(whole.Together) : cut.Together.IsEmpty, seed);
        AssertTrue(whole.Nearest.Budget, cut.Nearest.Budget, seed);
        AssertTrue(whole.Nearest.MaxPurchases, cut.Nearest.MaxPurchases, seed);
        AssertTrue(whole.Nearest.MaxBarlows, cut.Nearest.MaxBarlows, seed);
        AssertTrue(whole.Nearest.AllowedOverlaps, cut.Nearest.AllowedOverlaps, seed);
        AssertTrue(whole.Nearest.MaxPricePerItem, cut.Nearest.MaxPricePerItem, seed);
        AssertTrue(whole.Nearest.MaxItemMassGrams, cut.Nearest.MaxItemMassGrams, seed);
        Assert.All(whole.Nearest.WidthDeg.Zip(cut.Nearest.WidthDeg), pair => AssertTrue(pair.First, pair.Second, seed));
    }

    private static void AssertTrue<T>(Nearest<T> whole, Nearest<T> cut, string seed)
        where T : struct
    {
        Assert.True(whole.IsDecided, seed);
        Assert.True(cut.IsDecided ? cut.Value.Equals(whole.Value) : cut.Value is null, seed);
    }

    private static void CancelAt(int look, int last, CancellationTokenSource giveUp)
    {
        if (look == last)
        {
            giveUp.Cancel();
        }
    }

    private static Plan? SolveShort(PurchaseProblem problem, double units = AlmostNoWork)
    {
        try
        {
            return ModelEngine.Solve(problem, new WorkBudget(units));
        }
        catch (WorkLimitException)
        {
            return null;
        }
    }
}
