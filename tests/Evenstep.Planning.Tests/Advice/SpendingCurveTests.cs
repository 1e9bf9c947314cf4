using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

public class SpendingCurveTests
{
    private static readonly PurchaseProblem Problem = new()
    {
        Telescopes = [Some.InUse()],
        Observer = new(),
        Owned = [],
        Catalogue = [],
        Limits = new Limits { Budget = 1000 },
    };

    [Fact]
    public void Of_points_within_a_hundredth_the_cheaper_is_kept() =>
        Assert.Equal([0m, 20m, 40m], PricesOf(CurveOf((0, 3), (10, 2.975), (20, 2.9), (30, 2.88), (40, 2.871), (50, 2.86))));

    [Fact]
    public void Exactly_a_hundredth_is_told_apart() => Assert.Equal([0m, 10m], PricesOf(CurveOf((0, 2.02), (10, 2))));

    [Fact]
    public void A_chain_of_small_improvements_is_measured_from_the_last_point_kept() =>
        Assert.Equal([0m, 20m], PricesOf(CurveOf((0, 2), (10, 1.985), (20, 1.97), (30, 1.955))));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Of_so_few_points_the_last_is_suggested(int count) =>
        Assert.Equal(count - 1, CurveOf([.. new (decimal, double)[] { (0, 4), (100, 2) }.Take(count)]).SuggestedIndex);

    [Fact]
    public void The_point_farthest_below_the_chord_is_suggested() =>
        Assert.Equal(2, CurveOf((0, 8), (100, 6), (200, 2.5), (500, 2.2), (1000, 2)).SuggestedIndex);

    [Fact]
    public void Of_points_equally_far_below_the_cheaper_is_suggested() =>
        Assert.Equal(1, CurveOf((0, Math.Exp(3)), (1, Math.Exp(1.5)), (3, Math.Exp(0.5)), (6, 1)).SuggestedIndex);

    /// <summary>No point is below the chord then but the two that lie on it.</summary>
    [Fact]
    public void Where_all_money_helps_ever_more_the_first_is_suggested() =>
        Assert.Equal(0, CurveOf((0, 8), (500, 7.5), (1000, 2)).SuggestedIndex);

    private static SpendingCurve CurveOf(params (decimal Price, double Step)[] points) =>
        SpendingCurve.Of(new SpendingFrontier(Problem, [.. points.Select(point => new SpendingPoint([], point.Price, Math.Log(point.Step)))], 1000));

    private static IEnumerable<decimal> PricesOf(SpendingCurve curve) => curve.Points.Select(point => point.TotalPrice);
}
