using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class SpendingSelfTests
{
    private static readonly OracleProblem Asked = Problem(Even)
        .Selling(Eyepiece("exact", 5, price: 100), Eyepiece("near", 4.7, price: 20), Eyepiece("far", 4.5, price: 10))
        .Owning(Eyepiece("low", 10), Eyepiece("high", 2.5));

    [Fact]
    public void The_curve_has_every_step_with_its_least_price()
    {
        IReadOnlyList<OraclePoint> points = OracleSpending.Of(Asked).Frontier();

        Assert.Equal([0m, 10, 20, 100], points.Select(point => point.Price));
        Assert.Equal([4, 10 / 4.5, 10 / 4.7, 2], points.Select(point => Math.Exp(point.LnStep)), (one, other) => Math.Abs(one - other) < Close);
        Assert.Equal(["", "far", "near", "exact"], points.Select(point => string.Join(' ', Assert.Single(point.Plans).Ids)));
    }

    [Fact]
    public void What_is_enough_ends_the_curve()
    {
        IReadOnlyList<OraclePoint> points = OracleSpending.Of(Asked with { Preferences = new() { EnoughStep = 2.2 } }).Frontier();

        Assert.Equal([0m, 10, 20], points.Select(point => point.Price));
        Assert.Equal(2.2, Math.Exp(points[^1].LnStep), Close);
    }

    [Fact]
    public void Sets_of_one_price_and_step_are_told_apart_by_their_mean_excess()
    {
        OracleProblem problem = Problem(Even).Selling(Eyepiece("a", 5, price: 100), Eyepiece("b", 4.9, price: 100)).Owning(Eyepiece("low", 10));

        OraclePoint last = OracleSpending.Of(problem with { Preferences = new() { EnoughStep = 4 } }).Frontier()[^1];

        Assert.Equal(100, last.Price);
        Assert.Equal(["a", "b"], last.Plans.Select(plan => plan.Ids[0]));
        Assert.Equal(0, last.LeastMeanExcess, Close);
    }

    [Theory]
    [InlineData(new[] { 0, 10, 100 }, new[] { 0.2, 0.6, 0.7 }, 1)]
    [InlineData(new[] { 0, 50, 100 }, new[] { 0, 0.52, 1 }, 2)]
    [InlineData(new[] { 0, 50, 100 }, new[] { 0, 0.55, 1 }, 1)]
    [InlineData(new[] { 0, 10, 20, 100 }, new[] { 0, 0.4, 0.5, 1 }, 1)]
    [InlineData(new[] { 0, 50, 100 }, new[] { 0.5, 0.7, 0.5 }, 2)]
    [InlineData(new[] { 40 }, new[] { 0.5 }, 0)]
    public void The_point_farthest_below_the_chord_is_suggested(int[] prices, double[] served, int index) =>
        Assert.Equal(index, OracleSpending.Suggested([.. prices.Zip(served, (price, share) => ((decimal)price, share))]));

    [Fact]
    public void A_path_may_end_with_a_step_that_is_good_enough()
    {
        OraclePath best = Assert.Single(OraclePaths.Best(Asked));

        Assert.Equal(["near"], best.Ids);
        Assert.Equal(0, best.GreatestLoss, Close);
    }

    /// <summary>
    /// The middle and the high end together leave a step of 2, either of them alone one of 4, where the same money buys one
    /// of 2.56. Who can afford all three begins with that, and has 2.5 where the same money buys 2.
    /// </summary>
    [Theory]
    [InlineData(1.5, 120, 4 / 2.56)]
    [InlineData(1.5, 180, 2.5 / 2)]
    [InlineData(2.1, 180, 2.5 / 2.1)]
    public void A_loss_is_measured_against_what_the_money_buys_but_no_further_than_enough(double enough, int budget, double ratio)
    {
        OracleProblem problem = Problem(Even)
            .Selling(Eyepiece("middle", 5, price: 60), Eyepiece("high", 2.5, price: 60), Eyepiece("third", 4, price: 60))
            .Owning(Eyepiece("low", 10))
            .WithLimits(limits => limits with { Budget = budget }) with
        {
            Preferences = new() { EnoughStep = enough },
        };

        Assert.Equal(ratio - 1, OraclePaths.LeastLoss(problem)!.Value, Close);
    }
}
