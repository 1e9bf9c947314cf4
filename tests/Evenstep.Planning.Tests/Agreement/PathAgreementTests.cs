using System.Globalization;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>The no-regret path against all orders of all sets of small problems.</summary>
public class PathAgreementTests
{
    /// <summary>A long run: EVENSTEP_AGREEMENT_BATCHES=40 makes 4,000 problems.</summary>
    private static readonly int BatchCount = int.Parse(
        Environment.GetEnvironmentVariable("EVENSTEP_AGREEMENT_BATCHES") ?? "3", CultureInfo.InvariantCulture);

    private const int ProblemsPerBatch = 100;
    private const int FirstSeed = 70_000;
    private const double AlmostNoWork = 6e-5;

    /// <summary>How far two figures may be apart that were worked out in different ways.</summary>
    private const double FigureTolerance = 1e-6;

    /// <summary>Of 3,000 demanding problems the 20 in which the leeway of losses decides.</summary>
    private static readonly int[] LeewayDecides =
    [
        80001, 80015, 80150, 80204, 80334, 80369, 80407, 80493, 80858, 81581, 81834, 81839, 82003, 82022, 82208, 82323, 82517, 82610, 82683, 82970,
    ];

    /// <summary>The first 40 of the 122 in which no path is without any loss.</summary>
    private static readonly int[] AlwaysLossy =
    [
        80012, 80015, 80034, 80055, 80108, 80121, 80146, 80150, 80204, 80259, 80294, 80334, 80336, 80351, 80369, 80388, 80443, 80453, 80487, 80497,
        80512, 80529, 80548, 80573, 80585, 80601, 80612, 80665, 80721, 80726, 80774, 80824, 80844, 80859, 80878, 80881, 80968, 81052, 81143, 81190,
    ];

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, BatchCount)];

    [Theory]
    [MemberData(nameof(Batches))]
    public void The_path_is_the_best_of_all_orders_of_all_sets(int batch)
    {
        var seeds = Enumerable.Range(FirstSeed + (batch * ProblemsPerBatch), ProblemsPerBatch);
        Assert.Empty(seeds.SelectMany(seed => Faults(RandomProblems.Make(seed)).Select(fault => $"seed {seed}: {fault}")).Take(20));
    }

    [Fact]
    public void The_path_is_the_best_where_the_leeway_decides() => Assert.Empty(LeewayDecides.SelectMany(seed =>
    {
        var problem = RandomProblems.MakeDemanding(seed);
        Assert.True(OraclePaths.Best(problem)[0].GreatestLoss > OraclePaths.LeastLoss(problem) + FigureTolerance);
        return Faults(problem).Select(fault => $"seed {seed}: {fault}");
    }));

    [Fact]
    public void The_path_is_the_best_where_every_path_loses_something() => Assert.Empty(AlwaysLossy.SelectMany(seed =>
    {
        var problem = RandomProblems.MakeDemanding(seed);
        Assert.True(OraclePaths.LeastLoss(problem) > FigureTolerance);
        return Faults(problem).Select(fault => $"seed {seed}: {fault}");
    }));

    [Fact]
    public void The_order_in_which_items_are_listed_decides_nothing()
    {
        foreach (var seed in Enumerable.Range(FirstSeed, ProblemsPerBatch))
        {
            var problem = RandomProblems.Make(seed);
            Assert.Equal(PathOf(problem).Steps.AsEnumerable(), PathOf(RandomProblems.Shuffle(problem, seed)).Steps);
        }
    }

    [Fact]
    public void Where_the_work_ends_early_the_path_is_one_and_says_that_it_is_not_proved()
    {
        var cut = 0;
        foreach (var seed in Enumerable.Range(FirstSeed, 3 * ProblemsPerBatch))
        {
            var problem = RandomProblems.Make(seed);
            BuyingPath path;
            try
            {
                path = BuyingPathSearch.Solve(Bridge.ToProblem(problem), new WorkBudget(AlmostNoWork));
            }
            catch (WorkLimitException)
            {
                continue;
            }

            Assert.Empty(BuyingPathReferee.FaultsOf(path));
            cut += path.IsProved ? 0 : 1;
            if (path.IsProved)
            {
                Assert.Empty(Differences(OraclePaths.Best(problem), path));
            }
        }

        Assert.InRange(cut, ProblemsPerBatch / 10, (3 * ProblemsPerBatch) - 1);
    }

    [Fact]
    public void Where_nothing_may_be_bought_the_path_is_empty_though_something_is_free()
    {
        var problem = Some.Problem(owned: [Some.Eyepiece(25)], catalogue: [Some.Eyepiece(8, price: 0)]);
        var path = BuyingPathSearch.Solve(problem with { Limits = problem.Limits with { MaxPurchases = 0 } }, new WorkBudget(Comparison.WorkLimit));
        Assert.True(path is { Steps.IsEmpty: true, IsProved: true });
    }

    private static IEnumerable<string> Faults(OracleProblem problem)
    {
        var path = PathOf(problem);
        return
        [
            .. BuyingPathReferee.FaultsOf(path),
            .. path.IsProved ? Array.Empty<string>() : ["not proved"],
            .. Differences(OraclePaths.Best(problem), path),
            .. Near("least greatest loss", OraclePaths.LeastLoss(problem), path.LeastGreatestLoss),
        ];
    }

    private static IEnumerable<string> Differences(IReadOnlyList<OraclePath> best, BuyingPath path)
    {
        if (best.Count == 0 || path.Plan.Values is null)
        {
            return best.Count == 0 && path.Plan.Values is null && path.Steps.IsEmpty ? [] : ["one of the two has no path"];
        }

        var ids = path.Steps.Select(step => step.Item.Id).ToArray();
        return
        [
            .. best.Any(one => one.Ids.SequenceEqual(ids)) ? Array.Empty<string>()
                : [$"{string.Join(' ', ids)} is none of {string.Join("; ", best.Select(one => string.Join(' ', one.Ids)))}"],
            .. Near("price", (double)best[0].Price, (double)path.Steps.Sum(step => step.Item.Price)),
            .. Near("greatest loss", best[0].GreatestLoss, path.GreatestLoss),
        ];
    }

    private static IEnumerable<string> Near(string what, double? expected, double? actual) =>
        expected is null == actual is null && Math.Abs((expected - actual) ?? 0) <= FigureTolerance ? [] : [$"{what} is {expected:R}, not {actual:R}"];

    private static BuyingPath PathOf(OracleProblem problem) =>
        BuyingPathSearch.Solve(Bridge.ToProblem(problem), new WorkBudget(Comparison.WorkLimit));
}
