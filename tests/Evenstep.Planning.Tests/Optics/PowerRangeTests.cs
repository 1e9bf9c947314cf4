using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

public sealed class PowerRangeTests
{
    private static readonly Observer SixMillimetres = new() { PupilMm = 6 };

    [Theory]
    [InlineData(Barrel.Inch125, 27)]
    [InlineData(Barrel.Inch2, 46)]
    public void The_longest_practical_eyepiece_shows_fifty_degrees_through_its_barrel(Barrel barrel, double widestStopMm)
    {
        // Sky & Telescope, "An Eyepiece Primer", gives 32 and 55 mm; the field stops are common practice, no source.
        const double PublishedFieldDeg = 50;
        const double RelativeDifference = 0.10;
        const double DegreesPerRadian = 180 / Math.PI;
        var ratio = widestStopMm / barrel.LongestPracticalFocalLengthMm();

        Published.Agrees(PublishedFieldDeg, ratio * DegreesPerRadian, RelativeDifference * PublishedFieldDeg, "by the arc");
        Published.Agrees(PublishedFieldDeg, 2 * Math.Atan(ratio / 2) * DegreesPerRadian, RelativeDifference * PublishedFieldDeg, "by the tangent");
    }

    [Theory]
    [InlineData(Barrel.Inch0965, 25)] // Common practice, no source.
    [InlineData(Barrel.Inch125, 32)]
    [InlineData(Barrel.Inch2, 55)]
    public void A_slow_telescope_has_its_lowest_power_from_the_barrel(Barrel focuser, double longestMm)
    {
        var range = RangeOf(60, 900, focuser);
        Assert.Equal(900 / longestMm, range.Lowest, Published.Rounding);
        Assert.Equal(RangeEnd.Barrel, range.LowestSetBy);
    }

    [Fact]
    public void A_fast_telescope_has_its_lowest_power_from_the_pupil()
    {
        var range = RangeOf(200, 800, Barrel.Inch2);
        Assert.Equal(200.0 / 6, range.Lowest, Published.Rounding);
        Assert.Equal(RangeEnd.Pupil, range.LowestSetBy);
    }

    [Theory]
    [InlineData(70, 1.5, 100, RangeEnd.Aperture)]
    [InlineData(300, 1.5, 200, RangeEnd.Seeing)]
    [InlineData(300, 1, 300, RangeEnd.Seeing)] // "250 to 300 times on an ordinary night": common practice, no source.
    [InlineData(140, 1.5, 200, RangeEnd.Aperture)]
    public void The_highest_power_is_from_the_aperture_or_the_air(
        double apertureMm, double seeing, double highest, RangeEnd setBy)
    {
        var range = PowerRange.Of(Some.Telescope(apertureMm), SixMillimetres, seeing);
        Assert.Equal(highest, range.Highest, Published.Rounding);
        Assert.Equal(setBy, range.HighestSetBy);
    }

    [Theory]
    [InlineData(Interest.Planets, 140)]
    [InlineData(Interest.DoubleStars, 140)]
    [InlineData(Interest.Moon, 100)]
    [InlineData(Interest.PlanetaryNebulae, 100)]
    public void Planets_and_double_stars_bear_an_exit_pupil_of_half_a_millimetre(Interest interest, double highest)
    {
        // 0.7 and 0.5 mm are common practice, no source.
        var observer = SixMillimetres with { Observes = [Interest.LargeNebulae, interest] };
        var range = PowerRange.Of(Some.Telescope(70), observer, PowerRange.UsualSeeingArcsec);
        Assert.Equal(highest, range.Highest, Published.Rounding);
        Assert.Equal(RangeEnd.Aperture, range.HighestSetBy);
    }

    [Fact]
    public void The_air_limits_them_too()
    {
        var range = PowerRange.Of(Some.Telescope(140), SixMillimetres with { Observes = [Interest.Planets] }, PowerRange.UsualSeeingArcsec);
        Assert.Equal((200, RangeEnd.Seeing), (range.Highest, range.HighestSetBy));
    }

    [Fact]
    public void A_tie_at_the_low_end_goes_to_the_pupil()
    {
        var range = PowerRange.Of(Some.Telescope(192, 1024), SixMillimetres, 1);
        Assert.Equal(32, range.Lowest);
        Assert.Equal(RangeEnd.Pupil, range.LowestSetBy);
    }

    [Theory]
    [InlineData(60)]
    [InlineData(100)]
    [InlineData(200)]
    public void The_aperture_end_lies_between_the_resolving_power_and_twice_it(double apertureMm)
    {
        // P. Couteau, as cited in a handbook on visual double stars (R. W. Argyle ed.; title from memory): as much as
        // the aperture in mm resolves, twice as much shows close pairs.
        const double SteadyAirArcsec = 0.5;
        var range = PowerRange.Of(Some.Telescope(apertureMm), SixMillimetres, SteadyAirArcsec);
        Assert.Equal(RangeEnd.Aperture, range.HighestSetBy);
        Assert.InRange(range.Highest, apertureMm, 2 * apertureMm);
        var doubles = PowerRange.Of(Some.Telescope(apertureMm), SixMillimetres with { Observes = [Interest.DoubleStars] }, SteadyAirArcsec);
        Assert.Equal(2 * apertureMm, doubles.Highest, Published.Rounding);
    }

    [Fact]
    public void The_air_lets_through_as_much_as_the_eye_needs_to_part_two_stars()
    {
        // University of Arizona, OPTI-202R, homework 4, problem 1 (answer derived): an eye of 1 arcminute parts stars
        // 2.0 arcseconds apart at 30 times. The service takes 5 arcminutes, common practice, no source.
        const double ArcminutesTaken = 5;
        var range = PowerRange.Of(Some.Telescope(300), SixMillimetres, 2.0);
        Published.Agrees(30, range.Highest / ArcminutesTaken, Published.Rounding, "OPTI-202R homework 4-1");
    }

    [Fact]
    public void A_request_overrides_either_end()
    {
        var range = PowerRange.Of(Some.Telescope(), SixMillimetres, 1.5, lowest: 20, highest: 300);
        Assert.Equal(new PowerRange(20, RangeEnd.Request, 300, RangeEnd.Request), range);
    }

    [Theory]
    [InlineData(100, 150, true)]
    [InlineData(100, 149, false)]
    public void A_range_spans_at_least_one_and_a_half_times(double lowest, double highest, bool wideEnough)
    {
        var range = new PowerRange(lowest, RangeEnd.Request, highest, RangeEnd.Request);
        Assert.Equal(wideEnough, range.IsWideEnough);
        if (!wideEnough)
        {
            Assert.Throws<ArgumentException>(() => TelescopeInUse.Of(Some.Telescope(), range, []));
        }
    }

    private static PowerRange RangeOf(double apertureMm, double focalLengthMm, Barrel focuser) =>
        PowerRange.Of(Some.Telescope(apertureMm, focalLengthMm, focuser), SixMillimetres, PowerRange.UsualSeeingArcsec);
}
