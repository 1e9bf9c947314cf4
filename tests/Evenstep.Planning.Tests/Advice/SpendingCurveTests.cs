using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

public sealed class SpendingCurveTests
{
    private static readonly PurchaseProblem Problem = Some.Problem(Some.InUse(lowest: 25, highest: 200));

    [Fact]
    public void No_points_are_merged() => Assert.Equal([0m, 10m, 20m], CurveOf((0, 3), (10, 2.99), (20, 2.98)).Points.Select(point => point.TotalPrice));

    [Fact]
    public void What_is_enough_ends_the_curve() =>
        Assert.Equal([0m, 10m, 20m], CurveOf((0, 3), (10, 2), (20, 1.5), (30, 1.4), (40, 1.2)).Points.Select(point => point.TotalPrice));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Of_so_few_points_the_last_is_suggested(int count) =>
        Assert.Equal(count - 1, CurveOf([.. new (decimal, double)[] { (0, 4) }.Take(count)]).SuggestedIndex);

    [Theory]
    [InlineData(1, 0.6, 0.7, 0.9)] // two thirds of the gain for a tenth of the price
    [InlineData(2, 0.1, 0.6, 0.9)]
    [InlineData(2, 0.1, 0.35, 0.5)]
    public void The_knee_goes_by_the_share_served(int suggested, double second, double third, double last) =>
        Assert.Equal(suggested, SuggestedOf([0m, 10m, 50m, 100m], [0, second, third, last]));

    [Fact]
    public void Of_points_equally_far_below_the_chord_the_cheaper_is_suggested() => Assert.Equal(1, SuggestedOf([0m, 10m, 30m, 100m], [0, 0.5, 0.7, 1]));

    [Theory]
    [InlineData(0.55, 1)] // 0.05 below the chord
    [InlineData(0.549, 2)]
    [InlineData(0.3, 2)]
    public void A_point_hardly_below_the_chord_is_no_knee(double served, int suggested) =>
        Assert.Equal(suggested, SuggestedOf([0m, 50m, 100m], [0, served, 1]));

    [Fact]
    public void Where_the_last_serves_no_more_than_the_first_it_is_suggested() => Assert.Equal(2, SuggestedOf([0m, 50m, 100m], [0.5, 0.8, 0.5]));

    /// <summary>Nothing serves nothing; 10 mm serve some of the range; all three serve most of it.</summary>
    [Fact]
    public void Shares_are_those_of_the_kits()
    {
        ImmutableArray<Item> all = [Some.Eyepiece(5), Some.Eyepiece(10), Some.Eyepiece(20)];
        SpendingPoint[] points = [new([], 0, new(3)), new([all[1]], 10, new(2)), new(all, 100, new(1))];

        Assert.Equal(1, SpendingCurve.Of(new SpendingFrontier(Problem, [.. points], 1000)).SuggestedIndex);
        Assert.Equal(2, SpendingCurve.Of(new SpendingFrontier(Problem, [points[0], points[1] with { TotalPrice = 90 }, points[2]], 1000)).SuggestedIndex);
    }

    private static int SuggestedOf(decimal[] prices, double[] served) => SpendingCurve.SuggestedOf(
        [.. prices.Select(price => new SpendingPoint([], price, default))], [.. served.Select(share => 1 - share)]);

    private static SpendingCurve CurveOf(params (decimal Price, double Step)[] points) =>
        SpendingCurve.Of(new SpendingFrontier(Problem, [.. points.Select(point => new SpendingPoint([], point.Price, Step.Of(point.Step)))], 1000));
}
