using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

/// <summary>Drift at the celestial equator; elsewhere it takes longer by 1 / cos(declination), which the tests apply.</summary>
public sealed class PublishedDriftTests
{
    [Fact]
    public void One_degree_takes_239_345_seconds()
    {
        // Derived from the Earth Rotation Angle (Explanatory Supplement to the Astronomical Almanac, 3rd ed., 2013, p. 78).
        const double HalfLastPlace = 0.0005;
        Derived.Agrees(239.345, WithTrueField(1).DriftSeconds, HalfLastPlace, "Explanatory Supplement");
    }

    [Theory]
    [InlineData(86164.098903691, "The stellar day of the IERS, in seconds")]
    [InlineData(86164.09053083288, "The mean sidereal day, in seconds")]
    public void The_whole_sky_takes_a_day_of_the_stars(double daySeconds, string source)
    {
        // The two days differ by a ten-millionth, which no stop-watch sees.
        const double RelativeDifference = 2e-7;
        Published.Agrees(daySeconds, WithTrueField(1).DriftSeconds * 360, RelativeDifference * daySeconds, source);
    }

    [Fact]
    public void Six_minutes_at_the_equator_are_a_degree_and_a_half()
    {
        // Peoria Astronomical Society; its rule is 15 degrees an hour, 0.27 % from the sky's own rate.
        const double RelativeDifferenceOfRule = 0.003;
        Published.Agrees(360, WithTrueField(1.5).DriftSeconds, RelativeDifferenceOfRule * 360, "Peoria Astronomical Society");
    }

    [Fact]
    public void A_timed_star_gives_the_field_once_its_declination_is_allowed_for()
    {
        // As printed; three places are all that there are.
        const double trueFieldDeg = 0.481;
        const double halfLastPlace = 0.0005;
        const string source = "M. Hotka, Measuring the field of view";
        const double MeanOfThreeTimings = 120;
        const double DeclinationDeg = 16.5;
        // The two sidereal constants in use differ by a ten-millionth; a part in a million covers them.
        const double RelativeDifferenceOfRates = 1e-6;
        var within = MeanOfThreeTimings * ((halfLastPlace / trueFieldDeg) + RelativeDifferenceOfRates);

        var seconds = WithTrueField(trueFieldDeg).DriftSeconds / Math.Cos(DeclinationDeg * Math.PI / 180);

        Published.Agrees(MeanOfThreeTimings, seconds, within, source);
    }

    /// <summary>Fifty times, so that the apparent field is fifty true ones.</summary>
    private static View WithTrueField(double degrees) =>
        View.Of(Some.Unbounded(focalLengthMm: 2000), new Eyepiece(40, 50 * degrees, 16, Barrel.Inch2))!.Value;
}
