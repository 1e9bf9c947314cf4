using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

public sealed class ZoomViewTests
{
    /// <summary>From 60 degrees at 8 mm down to 42 at 24 mm, as a line.</summary>
    private static readonly Zoom Zoom8To24 = new(8, 24, 60, 42, 16, Barrel.Inch125);

    [Theory]
    [InlineData(8, 60)]
    [InlineData(12, 55.5)]
    [InlineData(16, 51)]
    [InlineData(24, 42)]
    public void Its_apparent_field_is_a_line_in_focal_length(double focalLengthMm, double apparentFieldDeg) =>
        Assert.Equal(apparentFieldDeg, Zoom8To24.ApparentFieldDegAt(focalLengthMm), Published.Rounding);

    [Theory]
    [InlineData(25, 42 / (1000.0 / 24))] // all of its powers are admitted: the longest focal length
    [InlineData(75, 50.25 / 60)] // 60x and more are: 16.7 mm
    [InlineData(125, 57.75 / 100)] // 100x and more are: 10 mm
    public void Its_true_field_is_that_at_the_lowest_power_admitted(double lowest, double trueFieldDeg)
    {
        var view = View.Of(Some.InUse(lowest: lowest, highest: 400), Zoom8To24)!.Value;
        Assert.Equal(trueFieldDeg, view.TrueFieldDeg, Published.Rounding);
        Assert.Equal(TrueFieldSource.Zoom, view.TrueFieldFrom);
    }

    [Fact]
    public void Through_a_barlow_the_power_admitted_needs_a_longer_focal_length()
    {
        // 80x and more are admitted; through a doubler 24 mm give 83x.
        var view = View.Of(Some.InUse(lowest: 100, highest: 400), Zoom8To24, new Barlow([2], Barrel.Inch125), 2)!.Value;
        Assert.Equal(42 / (2000.0 / 24), view.TrueFieldDeg, Published.Rounding);
    }

    [Fact]
    public void It_has_a_power_at_either_end_and_reaches_all_between()
    {
        var telescope = Some.InUse(lowest: 25, highest: 200);
        var view = View.Of(telescope, Zoom8To24)!.Value;
        Assert.Equal(1000.0 / 24, view.Power, Published.Rounding);
        Assert.Equal(125, view.PowerAtShortest, Published.Rounding);
        Assert.Equal(telescope.Axis.PositionOf(1000.0 / 24), view.From, Published.Rounding);
        Assert.Equal(telescope.Axis.PositionOf(125), view.To, Published.Rounding);
    }

    [Fact]
    public void Its_reach_is_cut_to_the_range()
    {
        var telescope = Some.InUse(lowest: 50, highest: 100);
        var view = View.Of(telescope, Zoom8To24)!.Value;
        Assert.Equal(0, view.From);
        Assert.Equal(telescope.Axis.Length, view.To);
    }

    [Theory]
    [InlineData(45, NotUsable.ApparentField)]
    [InlineData(42, null)]
    public void Its_apparent_field_is_judged_at_the_longest_focal_length(double leastDeg, NotUsable? expected)
    {
        var view = View.Of(Some.InUse(lowest: 25, highest: 200), Zoom8To24)!.Value;
        Assert.Equal(expected, view.NotUsableBecause(new Observer(), leastDeg, bought: true));
    }

    [Fact]
    public void Its_focal_lengths_are_two_and_in_order() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Zoom(24, 8, 42, 60, 16, Barrel.Inch125));
}
