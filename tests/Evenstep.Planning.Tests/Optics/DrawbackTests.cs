using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

/// <summary>All thresholds are common practice, no source. The telescope is f/10.</summary>
[Trait("Basis", "Common practice, no source")]
public sealed class DrawbackTests
{
    private static readonly Eyepiece Plain = new(20, 60, 16, Barrel.Inch125);

    [Fact]
    public void Nothing_speaks_against_a_plain_eyepiece() => Assert.Equal(Drawbacks.None, Of(Plain));

    [Theory]
    [InlineData(10.0, Drawbacks.None)]
    [InlineData(10.1, Drawbacks.SteepCone)]
    [InlineData(null, Drawbacks.None)] // not known
    public void A_cone_steeper_than_the_eyepiece_is_made_for_is_one(double? fastest, Drawbacks expected) =>
        Assert.Equal(expected, Of(Plain with { FastestFocalRatio = fastest }));

    [Fact]
    public void A_barlow_makes_the_cone_of_the_eyepiece_gentler_but_gets_that_of_the_telescope_itself()
    {
        var fussy = Plain with { FastestFocalRatio = 20 };
        Assert.Equal(Drawbacks.None, Of(fussy, new Barlow([2], Barrel.Inch125)));
        Assert.Equal(Drawbacks.SteepCone, Of(fussy, new Barlow([1.9], Barrel.Inch125)));
        Assert.Equal(Drawbacks.None, Of(fussy, new Barlow([2], Barrel.Inch125) { FastestFocalRatio = 10 }));
        Assert.Equal(Drawbacks.SteepCone, Of(fussy, new Barlow([2], Barrel.Inch125) { FastestFocalRatio = 10.1 }));
    }

    [Theory]
    [InlineData(false, null, 10, Drawbacks.None)] // 8 mm and 2 to spare
    [InlineData(false, null, 9.9, Drawbacks.TightEyeRelief)]
    [InlineData(true, null, 17, Drawbacks.None)]
    [InlineData(true, null, 16.9, Drawbacks.TightEyeRelief)]
    [InlineData(false, 12.0, 14, Drawbacks.None)]
    [InlineData(true, 12.0, 13.9, Drawbacks.TightEyeRelief)]
    public void Eye_relief_should_be_2_mm_more_than_is_comfortable(bool spectacles, double? least, double eyeReliefMm, Drawbacks expected) =>
        Assert.Equal(expected, Of(Of(eyeReliefMm), observer: new Observer { WearsSpectacles = spectacles, LeastEyeReliefMm = least }));

    /// <summary>20 mm make 2 mm of exit pupil, and half of that through a doubler: one dioptre allows 1.049 mm.</summary>
    [Theory]
    [InlineData(null, 10, Drawbacks.None)]
    [InlineData(null, 9.9, Drawbacks.TightEyeRelief)]
    [InlineData(18.0, 10, Drawbacks.None)]
    [InlineData(6.0, 8, Drawbacks.None)]
    [InlineData(6.0, 7.9, Drawbacks.TightEyeRelief)]
    public void Where_the_spectacles_come_off_8_mm_are_comfortable_at_the_most(double? least, double eyeReliefMm, Drawbacks expected)
    {
        var observer = new Observer { WearsSpectacles = true, AstigmatismDioptres = 1, LeastEyeReliefMm = least };
        Assert.Equal(expected, Of(Of(eyeReliefMm), new Barlow([2], Barrel.Inch125), observer));
    }

    [Theory]
    [InlineData(50, Drawbacks.None)]
    [InlineData(49.9, Drawbacks.NarrowField)]
    public void A_field_under_50_degrees_is_narrow(double apparentFieldDeg, Drawbacks expected) =>
        Assert.Equal(expected, Of(new Eyepiece(20, apparentFieldDeg, 16, Barrel.Inch125)));

    [Fact]
    public void A_zoom_is_judged_at_its_longest_focal_length_and_never_by_its_exit_pupil() => Assert.Equal(
        Drawbacks.NarrowField, Of(new Zoom(24, 70, 68, 49, 16, Barrel.Inch125)));

    [Theory]
    [InlineData(63, Drawbacks.None)] // exactly 1.05 times 6 mm
    [InlineData(63.1, Drawbacks.WideExitPupil)]
    public void An_exit_pupil_wider_than_the_eyes_loses_light(double focalLengthMm, Drawbacks expected) => Assert.Equal(
        expected, Of(new Eyepiece(focalLengthMm, 60, 16, Barrel.Inch125), observer: new Observer { PupilMm = 6 }));

    [Fact]
    public void Several_are_told_together() => Assert.Equal(
        Drawbacks.SteepCone | Drawbacks.TightEyeRelief | Drawbacks.NarrowField | Drawbacks.WideExitPupil,
        Of(new Eyepiece(70, 40, 5, Barrel.Inch125) { FastestFocalRatio = 12 }));

    private static Eyepiece Of(double eyeReliefMm) => new(20, 60, eyeReliefMm, Barrel.Inch125);

    private static Drawbacks Of(Ocular ocular, Barlow? barlow = null, Observer? observer = null) =>
        (barlow is null ? View.Of(Some.Unbounded(), ocular) : View.Of(Some.Unbounded(), ocular, barlow, barlow.Factors[0]))!.Value
            .DrawbacksFor(observer ?? new Observer());
}
