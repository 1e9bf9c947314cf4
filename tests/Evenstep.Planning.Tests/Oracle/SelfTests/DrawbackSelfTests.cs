using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

/// <summary>In a telescope of f/5 and 200 mm, for a pupil of 6 mm.</summary>
public sealed class DrawbackSelfTests
{
    private static readonly OracleProblem Asked = Problem(Zoned);

    [Fact]
    public void An_eyepiece_with_nothing_against_it_is_comfortable() => Assert.Empty(View(Asked, Eyepiece("one", 20)).Drawbacks);

    [Theory]
    [InlineData(5, null, null, false)]
    [InlineData(5.1, null, null, true)]
    [InlineData(10, 2.0, null, false)]
    [InlineData(10.1, 2.0, null, true)]
    [InlineData(4, 2.0, 5.0, false)]
    [InlineData(4, 2.0, 5.1, true)]
    public void A_cone_is_too_steep_for_the_eyepiece_behind_the_Barlow_or_for_the_Barlow_before_it(
        double fastest, double? factor, double? fastestOfBarlow, bool steep)
    {
        OracleItem? barlow = factor is { } one ? Barlow("barlow", one) with { FastestFocalRatio = fastestOfBarlow } : null;

        OracleView view = View(Asked, Eyepiece("one", 20) with { FastestFocalRatio = fastest }, barlow);

        Assert.Equal(steep ? ["steep-cone"] : [], view.Drawbacks);
    }

    [Theory]
    [InlineData(false, null, null, 10)]
    [InlineData(true, null, null, 17)]
    [InlineData(true, 0.0, null, 10)]
    [InlineData(true, 0.05, null, 10)]
    [InlineData(true, 0.1, null, 17)]
    [InlineData(false, null, 12.0, 14)]
    [InlineData(true, 0.0, 12.0, 10)]
    [InlineData(true, 0.0, 4.0, 6)]
    public void Eye_relief_is_tight_less_than_two_millimetres_above_what_is_comfortable(
        bool spectacles, double? cylinder, double? asked, double enough)
    {
        OracleProblem problem = Asked with
        {
            Observer = new OracleObserver { WearsSpectacles = spectacles, AstigmatismDioptres = cylinder, LeastEyeReliefMm = asked },
        };

        Assert.Empty(View(problem, Eyepiece("one", 20) with { EyeReliefMm = enough }).Drawbacks);
        Assert.Equal(["tight-eye-relief"], View(problem, Eyepiece("one", 20) with { EyeReliefMm = enough - 0.1 }).Drawbacks);
        Assert.Equal(["tight-eye-relief"], View(problem, Eyepiece("one", 20) with { EyeReliefMm = enough - 0.1 }, isOwned: true).Drawbacks);
    }

    [Fact]
    public void A_field_under_fifty_degrees_is_narrow()
    {
        Assert.Equal(["narrow-field"], View(Asked, Eyepiece("one", 20, field: 49.9)).Drawbacks);
        Assert.Equal(["narrow-field"], View(Asked, Zoom("zoom", 8, 24)).Drawbacks);
    }

    [Theory]
    [InlineData(31.5, null, false)]
    [InlineData(31.6, null, true)]
    [InlineData(31.5, 5.9, true)]
    [InlineData(31.6, 7.0, false)]
    public void An_exit_pupil_is_too_wide_a_twentieth_above_the_observers(double focalLength, double? pupil, bool wide)
    {
        OracleProblem problem = Asked with { Observer = new OracleObserver { PupilMm = pupil } };

        Assert.Equal(wide ? ["wide-exit-pupil"] : [], View(problem, Eyepiece("one", focalLength)).Drawbacks);
        Assert.Empty(View(problem, Zoom("zoom", 20, focalLength) with { ApparentFieldAtLongestDeg = 50 }).Drawbacks);
    }

    [Fact]
    public void All_are_listed_in_their_order_and_two_leave_no_quality()
    {
        OracleItem bad = Eyepiece("one", 35, field: 40) with { EyeReliefMm = 6, FastestFocalRatio = 8 };

        Assert.Equal(["steep-cone", "tight-eye-relief", "narrow-field", "wide-exit-pupil"], View(Asked, bad).Drawbacks);
        Assert.Equal(0, View(Asked, bad).Quality);
        Assert.Equal(0, View(Asked, Eyepiece("one", 35, field: 40)).Quality);
        Assert.Equal(0.5, View(Asked, Eyepiece("one", 20, field: 40)).Quality);
        Assert.Equal(1, View(Asked, Eyepiece("one", 20)).Quality);
    }

    [Theory]
    [InlineData(49, 0)]
    [InlineData(50, 0.25)]
    [InlineData(59, 0.25)]
    [InlineData(60, 0.5)]
    [InlineData(70, 0.75)]
    [InlineData(81, 0.75)]
    [InlineData(82, 1)]
    public void Who_prefers_wide_fields_has_the_quality_bounded_by_them(double field, double quality) =>
        Assert.Equal(quality, View(Preferring(OraclePrefer.WideField), Eyepiece("one", 20, field: field)).Quality);

    [Theory]
    [InlineData(7, 0)]
    [InlineData(8, 0.25)]
    [InlineData(12, 0.5)]
    [InlineData(15, 0.75)]
    [InlineData(17, 0.75)]
    [InlineData(18, 1)]
    public void Who_prefers_long_eye_relief_has_the_quality_bounded_by_it(double relief, double quality) =>
        Assert.Equal(quality, View(Preferring(OraclePrefer.LongEyeRelief), Eyepiece("one", 20) with { EyeReliefMm = relief }).Quality);

    [Fact]
    public void A_bound_betters_nothing() => Assert.Equal(
        0.5, View(Preferring(OraclePrefer.WideField), Eyepiece("one", 20, field: 82) with { EyeReliefMm = 6 }).Quality);

    private static OracleProblem Preferring(OraclePrefer prefer) => Asked with { Preferences = new OraclePreferences { Prefer = prefer } };
}
