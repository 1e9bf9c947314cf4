using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

public sealed class ViewTests
{
    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Theory]
    [InlineData(Barrel.Inch0965, Barrel.Inch0965, true)]
    [InlineData(Barrel.Inch0965, Barrel.Inch125, false)]
    [InlineData(Barrel.Inch0965, Barrel.Inch2, false)]
    [InlineData(Barrel.Inch125, Barrel.Inch0965, false)]
    [InlineData(Barrel.Inch125, Barrel.Inch125, true)]
    [InlineData(Barrel.Inch125, Barrel.Inch2, true)]
    [InlineData(Barrel.Inch2, Barrel.Inch0965, false)]
    [InlineData(Barrel.Inch2, Barrel.Inch125, false)]
    [InlineData(Barrel.Inch2, Barrel.Inch2, true)]
    public void A_barrel_fits_its_own_size_and_one_and_a_quarter_inch_also_two(Barrel barrel, Barrel focuser, bool fits)
    {
        var telescope = Some.InUse(Some.Telescope(focuser: focuser), 25, 200);
        Assert.Equal(fits, View.Of(telescope, new Eyepiece(20, 50, 16, barrel)) is not null);
    }

    [Theory]
    [InlineData(Barrel.Inch125, Barrel.Inch2, Barrel.Inch2, true)]
    [InlineData(Barrel.Inch125, Barrel.Inch125, Barrel.Inch2, true)]
    [InlineData(Barrel.Inch2, Barrel.Inch125, Barrel.Inch2, false)]
    [InlineData(Barrel.Inch125, Barrel.Inch2, Barrel.Inch125, false)]
    public void Through_a_barlow_both_barrels_must_fit(Barrel eyepiece, Barrel barlow, Barrel focuser, bool fits)
    {
        var telescope = Some.InUse(Some.Telescope(focuser: focuser), 25, 200);
        var views = View.Through(telescope, new Eyepiece(20, 50, 16, eyepiece), new Barlow([2], barlow));
        Assert.Equal(fits, views.Any());
    }

    [Fact]
    public void A_reticle_eyepiece_has_no_views()
    {
        var reticle = new Eyepiece(20, 50, 16, Barrel.Inch125) { Purpose = EyepiecePurpose.Reticle };
        Assert.Null(View.Of(From25To200, reticle));
        Assert.Empty(View.Through(From25To200, reticle, new Barlow([2], Barrel.Inch125)));
    }

    [Theory]
    [InlineData(50, null)] // 20x: exactly a quarter below
    [InlineData(50.1, NotUsable.BelowRange)]
    [InlineData(1000 / 220.0, null)] // 220x: exactly a tenth above
    [InlineData(4.54, NotUsable.AboveRange)]
    public void A_power_may_be_a_quarter_below_the_range_and_a_tenth_above_it(double focalLengthMm, NotUsable? expected)
    {
        var view = View.Of(From25To200, new Eyepiece(focalLengthMm, 50, 16, Barrel.Inch125))!.Value;
        Assert.Equal(expected, view.PowerOutsideRange());
        Assert.Equal(expected, view.NotUsableBecause(new Observer(), null, bought: true));
    }

    [Theory]
    [InlineData(45, 55, null)] // reaches 22x from below
    [InlineData(51, 60, NotUsable.BelowRange)]
    [InlineData(3, 5, null)] // reaches 200x from above
    [InlineData(3, 4.5, NotUsable.AboveRange)]
    [InlineData(3, 60, null)]
    public void A_zoom_needs_only_to_reach_in(double shortestMm, double longestMm, NotUsable? expected)
    {
        var view = View.Of(From25To200, new Zoom(shortestMm, longestMm, 60, 42, 16, Barrel.Inch125))!.Value;
        Assert.Equal(expected, view.NotUsableBecause(new Observer(), null, bought: true));
    }

    [Theory]
    [InlineData(60, 2, 20, NotUsable.BelowRange)]
    [InlineData(3, 2, 20, NotUsable.AboveRange)]
    [InlineData(20, 2, 20, NotUsable.EyeRelief)]
    [InlineData(20, 8, 20, NotUsable.ApparentField)]
    [InlineData(20, 8, 49.9, NotUsable.ApparentField)]
    [InlineData(20, 8, 50, null)]
    public void The_first_reason_that_fails_is_given(
        double focalLengthMm, double eyeReliefMm, double apparentFieldDeg, NotUsable? expected)
    {
        var view = View.Of(From25To200, new Eyepiece(focalLengthMm, apparentFieldDeg, eyeReliefMm, Barrel.Inch125))!.Value;
        Assert.Equal(expected, view.NotUsableBecause(new Observer(), leastApparentFieldDeg: 50, bought: true));
    }

    [Fact]
    public void What_lies_beyond_an_end_counts_as_the_end_but_keeps_its_real_power()
    {
        var view = View.Of(From25To200, new Eyepiece(48, 48, 16, Barrel.Inch125))!.Value;
        Assert.Equal(0, view.From);
        Assert.Equal(25, view.CutPower);
        Assert.Equal(1000.0 / 48, view.Power, Published.Rounding);
        Assert.Equal(4.8, view.ExitPupilMm, Published.Rounding);
        Assert.Equal(2.304, view.TrueFieldDeg, Published.Rounding);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-5)]
    [InlineData(0)]
    [InlineData(101)]
    public void No_eyepiece_has_an_absurd_focal_length(double focalLengthMm) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Eyepiece(focalLengthMm, 50, 16, Barrel.Inch125));
}
