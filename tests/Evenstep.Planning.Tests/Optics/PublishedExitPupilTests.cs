using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

/// <summary>Exit pupil is aperture over power: Sky &amp; Telescope, "A Pupil Primer".</summary>
public sealed class PublishedExitPupilTests
{
    [Theory]
    [InlineData(8, 42, 5.25, 0.005, "Audubon society of Oklahoma, slide on 8 x 42")]
    public void Exit_pupil_is_aperture_over_power(
        double power, double apertureMm, double publishedMm, double halfLastPlace, string source)
    {
        var view = At(power, apertureMm);

        Derived.Agrees(power, view.Power, Published.Rounding, source);
        Published.Agrees(publishedMm, view.ExitPupilMm, halfLastPlace, source);
    }

    [Theory]
    [InlineData(7, 50, 7.142857142857143, "50 / 7")]
    [InlineData(6, 30, 5, "University of Arizona, OPTI-202R, homework 4, problem 3, which prints no answer")]
    public void So_it_is_where_no_answer_is_printed(double power, double apertureMm, double derivedMm, string how) =>
        Derived.Agrees(derivedMm, At(power, apertureMm).ExitPupilMm, Published.Rounding, how);

    [Theory]
    [InlineData(6, 30, 5.0, 0.05, "Astronomical club text, singastro.org")]
    [InlineData(4.5, 35, 7.8, 0.05, "Observers' text, observers.org")]
    public void Exit_pupil_is_focal_length_over_focal_ratio(
        double focalRatio, double eyepieceMm, double publishedMm, double halfLastPlace, string source)
    {
        const double ApertureMm = 200;
        var view = ViewIn(ApertureMm, focalRatio * ApertureMm, eyepieceMm);

        Derived.Agrees(focalRatio, view.Telescope.Telescope.FocalRatio, Published.Rounding, source);
        Published.Agrees(publishedMm, view.ExitPupilMm, halfLastPlace, source);
    }

    [Fact]
    public void The_lowest_power_is_the_one_that_fills_the_pupil()
    {
        // I. E. Irodov, Problems in General Physics, 5.148: D = 5.0 cm, pupil 4.0 mm; 13 is printed for 12.5.
        var telescope = Some.Telescope(apertureMm: 50, focalLengthMm: 300);
        var range = PowerRange.Of(telescope, new Observer { PupilMm = 4.0 }, PowerRange.UsualSeeingArcsec);

        Published.Agrees(12.5, range.Lowest, Published.Rounding, "Irodov 5.148");
        Assert.Equal(RangeEnd.Pupil, range.LowestSetBy);
    }

    private static View At(double power, double apertureMm)
    {
        const double EyepieceMm = 25;
        return ViewIn(apertureMm, power * EyepieceMm, EyepieceMm);
    }

    private static View ViewIn(double apertureMm, double focalLengthMm, double eyepieceMm) =>
        View.Of(Some.Unbounded(apertureMm, focalLengthMm), new Eyepiece(eyepieceMm, 50, 16, Barrel.Inch125))!.Value;
}
