using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

/// <summary>A thin negative lens between telescope and eyepiece, by the lens equation.</summary>
public sealed class PublishedBarlowTests
{
    [Theory]
    [InlineData(75, 75, 2.0, Published.Rounding, "Barlow lens, encyclopedia article of 2010: one focal length")]
    [InlineData(75, 150, 3.0, Published.Rounding, "Barlow lens, encyclopedia article of 2010: two focal lengths")]
    [InlineData(75, 225, 4.0, Published.Rounding, "Barlow lens, encyclopedia article of 2010: three focal lengths")]
    public void The_lens_equation_gives_the_factor_and_the_view_takes_it(
        double lensMm, double toFinalFocusMm, double publishedFactor, double halfLastPlace, string source)
    {
        var factor = toFinalFocusMm / ToOriginalFocusMm(lensMm, toFinalFocusMm);
        Published.Agrees(publishedFactor, factor, halfLastPlace, source);

        var eyepiece = new Eyepiece(25, 50, 16, Barrel.Inch125);
        var alone = View.Of(Some.Unbounded(), eyepiece)!.Value;
        var through = View.Of(Some.Unbounded(), eyepiece, new Barlow([factor], Barrel.Inch125), factor)!.Value;

        Derived.Agrees(alone.Power * publishedFactor, through.Power, alone.Power * halfLastPlace, source);
        Assert.Equal(alone.ExitPupilMm / factor, through.ExitPupilMm, Published.Rounding);
        Assert.Equal(alone.TrueFieldDeg / factor, through.TrueFieldDeg, Published.Rounding);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(2.5)]
    [InlineData(5)]
    public void A_field_stop_seen_through_it_is_smaller_by_the_factor(double factor)
    {
        const double StopMm = 20;
        var barlow = new Barlow([factor], Barrel.Inch125);
        var through = View.Of(Some.Unbounded(), new Eyepiece(25, 50, 16, Barrel.Inch125) { FieldStopMm = StopMm }, barlow, factor)!.Value;
        var alone = View.Of(Some.Unbounded(), new Eyepiece(25, 50, 16, Barrel.Inch125) { FieldStopMm = StopMm / factor })!.Value;

        Assert.Equal(alone.TrueFieldDeg, through.TrueFieldDeg, Published.Rounding);
        Assert.Equal(TrueFieldSource.FieldStop, through.TrueFieldFrom);
    }

    [Fact]
    public void Each_factor_gives_a_view_of_its_own()
    {
        var barlow = new Barlow([3, 1.5, 2], Barrel.Inch125);
        var views = View.Through(Some.Unbounded(), new Eyepiece(20, 50, 16, Barrel.Inch125), barlow);
        Assert.Equal([75.0, 100.0, 150.0], views.Select(view => view.Power));
    }

    [Fact]
    public void It_leaves_eye_relief_as_it_is()
    {
        // A simplification: it lengthens that of simple eyepieces a little.
        var observer = new Observer { LeastEyeReliefMm = 17 };
        var barlow = new Barlow([2], Barrel.Inch125);
        var through = View.Of(Some.Unbounded(), new Eyepiece(25, 50, 16, Barrel.Inch125), barlow, 2)!.Value;
        Assert.Equal(NotUsable.EyeRelief, through.NotUsableBecause(observer, null, bought: true));
    }

    /// <summary>1/s' = 1/s - 1/|f|, for s.</summary>
    private static double ToOriginalFocusMm(double lensMm, double toFinalFocusMm) => 1 / ((1 / toFinalFocusMm) + (1 / lensMm));
}
