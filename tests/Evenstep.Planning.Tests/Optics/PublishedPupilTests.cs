using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

public sealed class PublishedPupilTests
{
    [Theory]
    [InlineData(25, 7.33)]
    [InlineData(35, 6.64)]
    [InlineData(45, 6.15)]
    [InlineData(55, 5.77)]
    [InlineData(65, 5.58)]
    [InlineData(75, 5.17)]
    [InlineData(80, 4.85)]
    public void The_pupil_at_the_middle_of_an_age_group_is_its_mean(double age, double publishedMm) => Published.Agrees(
        publishedMm, new Observer { Age = age }.DarkAdaptedPupilMm, Published.Rounding, "Bradley et al., J. Refract. Surg. 27 (2011) 202");

    [Theory]
    [InlineData(30, (7.33 + 6.64) / 2)]
    [InlineData(78, 5.17 + (0.6 * (4.85 - 5.17)))]
    [InlineData(18, 7.33)]
    [InlineData(5, 7.33)]
    [InlineData(110, 4.85)]
    public void Between_the_means_it_is_a_line_and_beyond_them_the_last_one(double age, double expectedMm) =>
        Assert.Equal(expectedMm, DarkAdaptedPupil.MmAtAge(age), Published.Rounding);

    [Fact]
    public void An_independent_formula_agrees_at_every_age_from_25_to_75()
    {
        // Birren, Casperson and Botwinick, J. Gerontol. 5 (1950) 216, as quoted in the documentation of a vision toolbox.
        const double DifferenceOfStudiesMm = 0.3;
        for (var age = 25; age <= 75; age++)
        {
            var birren = 9.08 - (0.082 * age) + (0.00037 * age * age);
            Published.Agrees(birren, DarkAdaptedPupil.MmAtAge(age), DifferenceOfStudiesMm, $"Birren et al. 1950 at {age}");
        }
    }

    [Fact]
    public void A_study_in_full_darkness_agrees_within_its_spread()
    {
        // Eur. J. Ophthalmol., doi 10.5301/ejo.5001027: 91 people of 39.7 years on average, 6.5 +- 1.3 mm at 0 lx.
        const double SpreadOfPeopleMm = 1.3;
        Published.Agrees(6.5, DarkAdaptedPupil.MmAtAge(39.7), SpreadOfPeopleMm, "doi 10.5301/ejo.5001027");
    }

    [Fact]
    public void A_measured_pupil_goes_before_age_and_age_before_six_millimetres()
    {
        Assert.Equal(5.5, new Observer { PupilMm = 5.5, Age = 25 }.DarkAdaptedPupilMm);
        Assert.Equal(7.33, new Observer { Age = 25 }.DarkAdaptedPupilMm);
        Assert.Equal(6.0, new Observer().DarkAdaptedPupilMm); // Common practice, no source.
    }

    [Fact]
    public void The_pupil_only_narrows_with_age()
    {
        for (var age = 5; age < 110; age++)
        {
            Assert.True(DarkAdaptedPupil.MmAtAge(age + 1) <= DarkAdaptedPupil.MmAtAge(age));
        }
    }
}
