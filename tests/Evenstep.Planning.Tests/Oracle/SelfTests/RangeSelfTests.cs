using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class RangeSelfTests
{
    [Fact]
    public void The_range_is_set_by_pupil_barrel_aperture_and_seeing()
    {
        OracleScale byPupilAndSeeing = Scale(Zoned);
        OracleScale byBarrelAndAperture = Scale(Zoned with { ApertureMm = 70, FocuserBarrel = OracleBarrel.Inch125 });

        Assert.Equal(200 / 6.0, byPupilAndSeeing.Lowest, Close);
        Assert.Equal(200, byPupilAndSeeing.Highest, Close);
        Assert.Equal(1000 / 32.0, byBarrelAndAperture.Lowest, Close);
        Assert.Equal(100, byBarrelAndAperture.Highest, 1e-9);
    }

    [Theory]
    [InlineData(OracleInterest.Planets, 140)]
    [InlineData(OracleInterest.DoubleStars, 140)]
    [InlineData(OracleInterest.Moon, 100)]
    public void Planets_and_double_stars_bear_an_exit_pupil_of_half_a_millimetre(OracleInterest interest, double highest) =>
        Assert.Equal(highest, Scale(Zoned with { ApertureMm = 70 }, OracleInterest.Galaxies, interest).Highest, 1e-9);

    [Theory]
    [InlineData(10, 7.33)]
    [InlineData(30, 6.985)]
    [InlineData(78, 4.978)]
    [InlineData(90, 4.85)]
    public void The_pupil_follows_age(int age, double pupil) =>
        Assert.Equal(pupil, OracleScale.Pupil(new OracleObserver { Age = age }), Close);

    [Fact]
    public void Positions_weigh_the_zones()
    {
        OracleScale scale = Scale(Zoned);

        Assert.Equal(0, scale.Position(30), Close);
        Assert.Equal(0.6 * Math.Log(1.5), scale.Position(50), Close);
        Assert.Equal((0.6 * Math.Log(1.5)) + (0.9 * Math.Log(2)), scale.Position(100), Close);
        Assert.Equal((0.6 * Math.Log(1.5)) + (1.9 * Math.Log(2)), scale.Length, Close);
        Assert.Equal(scale.Length, scale.Position(240), Close);
    }

    [Theory]
    [InlineData(OracleInterest.LargeNebulae, 0.6, 0.45, 0.5)]
    [InlineData(OracleInterest.Galaxies, 0.45, 0.9, 0.5)]
    [InlineData(OracleInterest.StarClusters, 0.45, 0.9, 1)]
    [InlineData(OracleInterest.Planets, 0.45, 0.45, 1)]
    [InlineData(OracleInterest.DoubleStars, 0.45, 0.45, 0.5)]
    public void Zones_that_no_interest_names_count_half_but_not_less_than_that(OracleInterest interest, double low, double middle, double high)
    {
        OracleScale scale = Scale(Zoned, interest);

        Assert.Equal(low * Math.Log(1.5), scale.Position(50), Close);
        Assert.Equal(middle * Math.Log(2), scale.Position(100) - scale.Position(50), Close);
        Assert.Equal(high * Math.Log(2), scale.Position(200) - scale.Position(100), Close);
    }

    private static OracleScale Scale(OracleTelescope telescope, params OracleInterest[] interests) =>
        new(telescope, Problem(telescope) with { Observer = new OracleObserver { Observes = interests } });
}
