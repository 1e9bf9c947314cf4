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

    /// <summary>Of 3,000 demanding problems those in which the leeway of losses decides.</summary>
    private static readonly int[] LeewayDecides =
    [
        80001, 80041, 80102, 80137, 80317, 80341, 80656, 80837, 80914, 80939, 81107, 81129, 81228, 81329, 81528, 81580, 81594, 81626, 81863, 82057,
        82066, 82079, 82116, 82317, 82396, 82490, 82611, 82710, 82711, 82829, 82948,
    ];

    /// <summary>The first of them in which no path is without any loss.</summary>
    private static readonly int[] AlwaysLossy =
    [
        80017, 80033, 80054, 80098, 80102, 80118, 80148, 80152, 80184, 80192, 80282, 80288, 80322, 80334, 80379, 80382, 80386, 80388, 80499, 80533,
        80538, 80564, 80590, 80642, 80675, 80745, 80770, 80771, 80788, 80806, 80811, 80827, 80830, 80833, 80868, 80888, 80901, 80905, 80944, 80991,
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
        var problem = Demanding(seed);
        Assert.True(OraclePaths.Best(problem)[0].GreatestLoss > OraclePaths.LeastLoss(problem) + FigureTolerance);
        return Faults(problem).Select(fault => $"seed {seed}: {fault}");
    }));

    [Fact]
    public void The_path_is_the_best_where_every_path_loses_something() => Assert.Empty(AlwaysLossy.SelectMany(seed =>
    {
        var problem = Demanding(seed);
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

    /// <summary>A problem in which it takes more purchases to be content, and more may be made.</summary>
    private static OracleProblem Demanding(int seed)
    {
        var problem = RandomProblems.Make(seed);
        return problem with
        {
            Limits = problem.Limits with { Budget = 2 * problem.Limits.Budget, MaxPurchases = 4, MaxPricePerItem = null, MaxItemMassGrams = null },
            Preferences = problem.Preferences with { EnoughStep = 1.05, LeastStep = 1.02 },
        };
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
