using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class ViewSelfTests
{
    [Theory]
    [InlineData(12.51, "below-range")]
    [InlineData(12.5, null)]
    [InlineData(2.28, null)]
    [InlineData(2.27, "above-range")]
    public void A_view_may_lie_a_quarter_below_the_range_and_a_tenth_above_it(double focalLength, string? reason) =>
        Assert.Equal(reason, View(Problem(Even), Eyepiece("one", focalLength)).NotUsableBecause);

    [Theory]
    [InlineData(10, 13, null)]
    [InlineData(12.6, 13, "below-range")]
    [InlineData(1, 2.26, "above-range")]
    [InlineData(1, 2.28, null)]
    public void A_zoom_must_reach_into_that(double shortest, double longest, string? reason) =>
        Assert.Equal(reason, View(Problem(Even), Zoom("zoom", shortest, longest)).NotUsableBecause);

    [Fact]
    public void A_zooms_true_field_is_that_at_its_lowest_power_admitted()
    {
        OracleItem zoom = Zoom("zoom", 30, 60) with { ApparentFieldAtShortestDeg = 70, ApparentFieldAtLongestDeg = 40 };

        OracleView view = View(Problem(Zoned), zoom);

        Assert.Equal(62.5 / (200 / 6.0 / 1.25), view.TrueFieldDeg, Close);
        Assert.Equal(12, view.ExitPupilMm, Close);
        Assert.Equal(0, view.Start, Close);
        Assert.Equal(0, view.End, Close);
    }

    [Theory]
    [InlineData(20, 20.0, 57.3)]
    [InlineData(20, 46.0, 130)]
    [InlineData(40, 5.0, 10)]
    [InlineData(20, null, 50)]
    public void An_unknown_apparent_field_is_taken_from_the_field_stop(double focalLength, double? stop, double field) =>
        Assert.Equal(field, (Eyepiece("one", focalLength) with { StatedApparentFieldDeg = null, FieldStopMm = stop }).ApparentFieldDeg, Close);

    [Theory]
    [InlineData(10, 7)]
    [InlineData(28, 19.6)]
    [InlineData(30, 20)]
    public void An_unknown_eye_relief_follows_the_focal_length(double focalLength, double relief) =>
        Assert.Equal(relief, (Eyepiece("one", focalLength) with { StatedEyeReliefMm = null }).EyeReliefMm, Close);

    [Fact]
    public void What_is_stated_is_not_assumed()
    {
        OracleItem item = Eyepiece("one", 20, field: 60) with { FieldStopMm = 30 };

        Assert.Equal((60, 10), (item.ApparentFieldDeg, item.EyeReliefMm));
    }

    [Theory]
    [InlineData(1.1, 0, 5)]
    [InlineData(1.11, 12, 12)]
    [InlineData(0.0, 0, 5)]
    [InlineData(null, 12, 12)]
    public void Spectacles_come_off_at_exit_pupils_that_hide_the_astigmatism(double? cylinder, double owned, double bought)
    {
        OracleProblem problem = Problem(Even) with
        {
            Observer = new OracleObserver { WearsSpectacles = true, AstigmatismDioptres = -cylinder, LeastEyeReliefMm = 12 },
        };

        Assert.Equal(owned, OracleEyeRelief.Needed(problem, 1, owned: true));
        Assert.Equal(bought, OracleEyeRelief.Needed(problem, 1, owned: false));
    }

    [Theory]
    [InlineData(false, null, 0, 5)]
    [InlineData(true, null, 15, 15)]
    [InlineData(false, 3.0, 3, 3)]
    [InlineData(true, 12.0, 12, 12)]
    public void Eye_relief_is_needed_as_asked_or_for_spectacles_or_for_what_is_bought(bool spectacles, double? asked, double owned, double bought)
    {
        OracleProblem problem = Problem(Even) with { Observer = new OracleObserver { WearsSpectacles = spectacles, LeastEyeReliefMm = asked } };

        Assert.Equal(owned, OracleEyeRelief.Needed(problem, 1, owned: true));
        Assert.Equal(bought, OracleEyeRelief.Needed(problem, 1, owned: false));
    }
}
