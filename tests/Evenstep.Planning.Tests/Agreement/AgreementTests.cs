using System.Globalization;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Solving.Model;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>The engines against an exhaustive solver that was written from the definitions by someone who had not seen them.</summary>
public class AgreementTests
{
    /// <summary>A long run: EVENSTEP_AGREEMENT_BATCHES=40 makes 20,000 problems.</summary>
    private static readonly int BatchCount = int.Parse(
        Environment.GetEnvironmentVariable("EVENSTEP_AGREEMENT_BATCHES") ?? "12", CultureInfo.InvariantCulture);
    private const int ProblemsPerBatch = 500;
    private const long FewNodes = 3;
    private const long ManyNodes = 1_000_000;

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, BatchCount)];

    [Theory]
    [MemberData(nameof(Batches))]
    public void The_planner_agrees_with_exhaustive_search(int batch) =>
        AssertAgreement(batch, problem => Planner.Solve(problem, new WorkBudget(Comparison.WorkLimit)));

    [Theory]
    [MemberData(nameof(Batches))]
    public void The_model_alone_agrees_with_exhaustive_search(int batch) =>
        AssertAgreement(batch, problem => ModelEngine.Solve(problem, new WorkBudget(Comparison.WorkLimit)));

    /// <summary>The search needs no help on problems as small as these, and says so itself where nothing is allowed.</summary>
    [Fact]
    public void The_search_alone_settles_every_small_problem()
    {
        foreach (var seed in Enumerable.Range(0, ProblemsPerBatch))
        {
            var searched = SearchEngine.Solve(Bridge.ToProblem(RandomProblems.Make(seed)), ManyNodes, new WorkBudget(Comparison.WorkLimit));
            Assert.True(searched.Plan is not null || searched.IsNothingAllowed, $"seed {seed}");
        }
    }

    [Fact]
    public void The_model_ends_what_the_search_began_with_the_same_plan()
    {
        var handedOver = 0;
        foreach (var seed in Enumerable.Range(0, 2 * ProblemsPerBatch))
        {
            var problem = Bridge.ToProblem(RandomProblems.Make(seed));
            var searched = SearchEngine.Solve(problem, FewNodes, new WorkBudget(Comparison.WorkLimit));
            if (searched.HeadStart is not { } headStart)
            {
                continue;
            }

            handedOver++;
            var ended = ModelEngine.Solve(problem, new WorkBudget(Comparison.WorkLimit), headStart);
            var whole = SearchEngine.Solve(problem, ManyNodes, new WorkBudget(Comparison.WorkLimit)).Plan!;
            Assert.Equal(whole.Purchases.AsEnumerable(), ended.Purchases);
            Assert.Equal(whole.Outcome, ended.Outcome);
        }

        Assert.True(handedOver > ProblemsPerBatch / 2, $"only {handedOver} were handed over");
    }

    /// <summary>Equal sets are told apart by one rule, and the order of the catalogue has no part in it.</summary>
    [Fact]
    public void The_model_alone_chooses_the_very_set_that_the_search_does_in_whatever_order_items_are_listed()
    {
        foreach (var seed in Enumerable.Range(0, ProblemsPerBatch))
        {
            var drawn = RandomProblems.Make(seed);
            var shuffled = Bridge.ToProblem(RandomProblems.Shuffle(drawn, seed + 1));
            var searched = SearchEngine.Solve(Bridge.ToProblem(drawn), ManyNodes, new WorkBudget(Comparison.WorkLimit)).Plan;
            var modelled = ModelEngine.Solve(shuffled, new WorkBudget(Comparison.WorkLimit));
            Assert.Equal(searched?.Purchases.AsEnumerable() ?? [], modelled.Purchases);
        }
    }

    private static void AssertAgreement(int batch, Func<PurchaseProblem, Plan> solve)
    {
        var seeds = Enumerable.Range(batch * ProblemsPerBatch, ProblemsPerBatch);
        var faults = seeds.SelectMany(seed => Comparison.Differences(RandomProblems.Make(seed), solve).Select(fault => $"seed {seed}: {fault}"));
        Assert.Empty(faults.Take(20));
    }
}
