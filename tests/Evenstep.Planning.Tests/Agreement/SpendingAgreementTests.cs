using System.Globalization;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>The spending curve against all allowed sets of small problems.</summary>
public class SpendingAgreementTests
{
    /// <summary>A long run: EVENSTEP_AGREEMENT_BATCHES=40 makes 10,000 problems.</summary>
    private static readonly int BatchCount = int.Parse(
        Environment.GetEnvironmentVariable("EVENSTEP_AGREEMENT_BATCHES") ?? "4", CultureInfo.InvariantCulture);

    private const int ProblemsPerBatch = 250;
    private const int FirstSeed = 50_000;
    private const double AlmostNoWork = 8e-6;

    /// <summary>How far two figures may be apart that were worked out in different ways.</summary>
    private const double FigureTolerance = 1e-6;

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, BatchCount)];

    [Theory]
    [MemberData(nameof(Batches))]
    public void The_frontier_is_that_of_all_allowed_sets(int batch)
    {
        var seeds = Enumerable.Range(FirstSeed + (batch * ProblemsPerBatch), ProblemsPerBatch);
        Assert.Empty(seeds.SelectMany(seed => Faults(RandomProblems.Make(seed)).Select(fault => $"seed {seed}: {fault}")).Take(20));
    }

    [Theory]
    [MemberData(nameof(Batches))]
    public void The_order_in_which_items_are_listed_decides_nothing(int batch)
    {
        foreach (var seed in Enumerable.Range(FirstSeed + (batch * ProblemsPerBatch), ProblemsPerBatch))
        {
            var problem = RandomProblems.Make(seed);
            Assert.Equal(Sets(problem), Sets(RandomProblems.Shuffle(problem, seed)));
        }

        static IEnumerable<string> Sets(OracleProblem problem) => FrontierOf(problem).Points.Select(point => string.Join(' ', point.Purchases));
    }

    [Fact]
    public void Where_the_work_ends_early_what_is_called_proved_is_so()
    {
        var cut = 0;
        foreach (var seed in Enumerable.Range(FirstSeed, ProblemsPerBatch))
        {
            var problem = RandomProblems.Make(seed);
            var hurried = SpendingSearch.Solve(Bridge.ToProblem(problem), new WorkBudget(AlmostNoWork));
            var expected = OracleSpending.Of(problem).Frontier().TakeWhile(point => point.Price <= (hurried.ProvedUpTo ?? -1)).ToArray();

            cut += hurried.IsProved ? 0 : 1;
            Assert.Empty(SpendingReferee.FaultsOf(hurried));
            Assert.Equal(
                expected.Select(point => point.Price),
                hurried.Points.Select(point => point.TotalPrice).TakeWhile(price => price <= (hurried.ProvedUpTo ?? -1)));
        }

        Assert.InRange(cut, ProblemsPerBatch / 5, ProblemsPerBatch - 1);
    }

    private static List<string> Faults(OracleProblem problem)
    {
        var expected = OracleSpending.Of(problem).Frontier();
        var frontier = FrontierOf(problem);
        var points = frontier.Points;
        List<string> faults = [.. SpendingReferee.FaultsOf(frontier)];
        if (!frontier.IsProved)
        {
            faults.Add("not proved");
        }

        var isSame = points.Length == expected.Count && points.Zip(expected).All(pair =>
            pair.First.TotalPrice == pair.Second.Price && Math.Abs(pair.First.LargestStep.Ln - pair.Second.LnStep) <= FigureTolerance);
        return isSame
            ? faults
            : [
                .. faults,
                $"({string.Join("; ", expected)}) was expected, not ({string.Join("; ", points.Select(point => (point.TotalPrice, point.LargestStep)))})"
            ];
    }

    private static SpendingFrontier FrontierOf(OracleProblem problem) =>
        SpendingSearch.Solve(Bridge.ToProblem(problem), new WorkBudget(Comparison.WorkLimit));
}
