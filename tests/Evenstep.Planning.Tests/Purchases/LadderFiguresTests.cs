using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class LadderFiguresTests
{
    private const double Enough = 0.2;

    /// <summary>Allowed to the averages over <see cref="Samples"/> points: the mismatch is made of straight pieces.</summary>
    private const double AverageError = 1e-6;

    /// <summary>A point on the wrong side of the limit at each of at most 14 crossings.</summary>
    private const double ShareError = 14.0 / Samples;

    private const int Samples = 20_000;

    [Fact]
    public void The_formulas_agree_with_sums_over_sampled_points()
    {
        var random = new Random(20_140);
        for (var round = 0; round < 60; round++)
        {
            var length = 0.5 + (3 * random.NextDouble());
            ImmutableArray<Reach> reaches = [.. Enumerable.Range(0, random.Next(1, 7)).Select(_ => RandomReach(random, length))];
            AssertAgree(reaches, length);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.2)]
    [InlineData(3)]
    public void One_view_is_as_good_as_its_farther_end(double position)
    {
        const double Length = 3;
        AssertAgree([new Reach(position, position)], Length);
        var figures = FiguresOf([new Reach(position, position)], Length);
        Assert.Equal(Math.Max(position, Length - position), figures.GreatestMismatch, Tolerance.Value);
    }

    [Fact]
    public void No_view_counts_as_a_mismatch_of_the_whole_axis()
    {
        const double Length = 2.5;
        var figures = FiguresOf([], Length);
        Assert.Equal(new LadderFigures(false, Length, Length, Length - Enough, 0), figures);
        Assert.Equal(Math.Exp(2 * Length), figures.LargestStep.Ratio, Math.Exp(2 * Length) * Tolerance.Value);
    }

    [Fact]
    public void No_view_on_a_short_axis_exceeds_nothing() =>
        Assert.Equal(0, FiguresOf([], Enough / 2).MeanExcess);

    [Fact]
    public void A_zoom_over_the_whole_axis_leaves_nothing_to_wish_for() =>
        Assert.Equal(new LadderFigures(true, 0, 0, 0, 1), FiguresOf([new Reach(0, 2)], 2));

    [Fact]
    public void A_view_inside_a_zoom_changes_nothing()
    {
        var zoom = new Reach(0.5, 1.5);
        Assert.Equal(FiguresOf([zoom], 2), FiguresOf([new Reach(1, 1), zoom, new Reach(0.7, 0.9)], 2));
    }

    [Fact]
    public void The_largest_step_between_neighbours_is_their_ratio_and_at_an_end_its_square()
    {
        // All of it between exit pupils of 2 and 1 mm, of weight 1.
        var telescope = Some.InUse(lowest: 50, highest: 100);
        double AtPower(double first, double second) => FiguresOf(
            [Point(telescope, first), Point(telescope, second)], telescope.Axis.Length).LargestStep.Ratio;

        Assert.Equal(2, AtPower(50, 100), Tolerance.Value);
        Assert.Equal(100.0 / 80 * 100 / 80, AtPower(60, 80), Tolerance.Value);
        Assert.Equal(1.2 * 1.2, AtPower(60, 85), Tolerance.Value);
    }

    [Fact]
    public void The_formula_of_the_comfortable_share_agrees_with_sampled_points()
    {
        var random = new Random(20_141);
        for (var round = 0; round < 60; round++)
        {
            var length = 0.5 + (3 * random.NextDouble());
            ImmutableArray<Reach> reaches = [.. Enumerable.Range(0, random.Next(1, 7)).Select(_ => RandomReach(random, length))];
            Reach[] comfortable = [.. reaches.Where(_ => random.Next(2) == 0)];
            var figures = LadderFigures.Of(reaches, comfortable, length, new MismatchLimits(Enough, Enough));
            var near = Enumerable.Range(0, Samples).Count(i => comfortable.Any(reach => Mismatch((i + 0.5) * length / Samples, [reach]) <= Enough));
            Assert.Equal(near / (double)Samples, figures.ComfortableShare, ShareError);
            Assert.True(figures.ComfortableShare <= figures.ServedShare + Tolerance.Value);
        }
    }

    /// <summary>Two views half a unit from either end of an axis of 2, each serving 0.2 on either side.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 0.2)]
    [InlineData(2, 0.4)]
    public void The_comfortable_share_counts_comfortable_views_alone(int comfortable, double share)
    {
        Reach[] all = [new(0.5, 0.5), new(1.5, 1.5)];
        var figures = LadderFigures.Of(all, all[..comfortable], 2, new MismatchLimits(Enough, Enough));
        Assert.Equal(0.4, figures.ServedShare, Tolerance.Value);
        Assert.Equal(share, figures.ComfortableShare, Tolerance.Value);
    }

    /// <summary>A step of less than 1.2 may be asked for, and yet what lies within 1.2 of two views is served: common practice, no source.</summary>
    [Theory]
    [InlineData(1, 1.2)]
    [InlineData(1.1, 1.2)]
    [InlineData(1.2, 1.2)]
    [InlineData(1.5, 1.5)]
    public void What_is_served_lies_within_half_a_step_of_at_least_1_2(double enoughStep, double servedStep)
    {
        var problem = Some.Problem(Some.InUse(lowest: 50, highest: 200), owned: [Some.Eyepiece(10)]) with
        {
            Preferences = new Preferences { EnoughStep = enoughStep },
        };
        var figures = Kit.Of(problem, []).Figures;
        Assert.Equal(Math.Log(servedStep) / Math.Log(4), figures.ServedShare, Tolerance.Value);
        Assert.Equal(figures.ServedShare, figures.ComfortableShare, Tolerance.Value);
        Assert.Equal(Math.Log(enoughStep) / 2, problem.EnoughStep.Half, Tolerance.Value);
    }

    [Fact]
    public void A_kit_is_as_bad_as_its_worst_telescope_and_on_average_as_their_average()
    {
        Assert.Equal(0.25, LadderFigures.Of([Comfortable(0.1), Comfortable(0.4)]).ComfortableShare, Tolerance.Value);
        var good = new LadderFigures(true, 0.2, 0.10, 0.00, 1.0);
        var poor = new LadderFigures(true, 0.9, 0.30, 0.20, 0.5);
        var bare = new LadderFigures(false, 2.0, 2.00, 1.80, 0.0);

        AssertFigures(new LadderFigures(true, 0.9, 0.2, 0.1, 0.75), LadderFigures.Of([good, poor]));
        AssertFigures(new LadderFigures(true, 2.0, 0.8, 2.0 / 3, 0.5), LadderFigures.Of([good, poor, bare]));
        Assert.False(LadderFigures.Of([bare, bare]).HasViews);
    }

    /// <summary>A view at the middle of an axis of 1 that serves so much of it.</summary>
    private static LadderFigures Comfortable(double share) =>
        LadderFigures.Of([new Reach(0.5, 0.5)], [new Reach(0.5, 0.5)], 1, new MismatchLimits(share / 2, share / 2));

    private static void AssertFigures(LadderFigures expected, LadderFigures actual)
    {
        Assert.Equal(expected.HasViews, actual.HasViews);
        Assert.Equal(expected.GreatestMismatch, actual.GreatestMismatch, Tolerance.Value);
        Assert.Equal(expected.MeanMismatch, actual.MeanMismatch, Tolerance.Value);
        Assert.Equal(expected.MeanExcess, actual.MeanExcess, Tolerance.Value);
        Assert.Equal(expected.ServedShare, actual.ServedShare, Tolerance.Value);
    }

    private static LadderFigures FiguresOf(IReadOnlyCollection<Reach> reaches, double length) =>
        LadderFigures.Of(reaches, [], length, new MismatchLimits(Enough, Enough));

    private static void AssertAgree(ImmutableArray<Reach> reaches, double length)
    {
        double[] sampled = [.. Enumerable.Range(0, Samples).Select(i => Mismatch((i + 0.5) * length / Samples, reaches))];
        var figures = FiguresOf(reaches, length);

        Assert.True(figures.HasViews);
        Assert.InRange(figures.GreatestMismatch, sampled.Max() - Tolerance.Value, sampled.Max() + (length / Samples));
        Assert.Equal(sampled.Average(), figures.MeanMismatch, AverageError);
        Assert.Equal(sampled.Average(one => Math.Max(0, one - Enough)), figures.MeanExcess, AverageError);
        Assert.Equal(sampled.Count(one => one <= Enough) / (double)Samples, figures.ServedShare, ShareError);
    }

    private static double Mismatch(double position, ImmutableArray<Reach> reaches) =>
        reaches.Min(reach => Math.Max(0, Math.Max(reach.From - position, position - reach.To)));

    private static Reach RandomReach(Random random, double length)
    {
        var (a, b) = (random.NextDouble() * length, random.NextDouble() * length);
        return random.Next(3) == 0 ? new Reach(Math.Min(a, b), Math.Max(a, b)) : new Reach(a, a);
    }

    private static Reach Point(TelescopeInUse telescope, double power) =>
        new(telescope.Axis.PositionOf(power), telescope.Axis.PositionOf(power));
}
