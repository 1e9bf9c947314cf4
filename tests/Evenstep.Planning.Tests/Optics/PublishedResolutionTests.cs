namespace Evenstep.Planning.Tests.Optics;

public sealed class PublishedResolutionTests
{
    /// <summary>The wavelength of the service's figure, in nm.</summary>
    private const double WavelengthNm = 550;

    /// <summary>
    /// The criterion is 1.22 wavelengths over the aperture, so that a case of another colour, or of an aperture that no
    /// telescope of the service has, scales exactly from one that it has.
    /// </summary>
    [Theory]
    [InlineData(2400, 550, 2.80e-7, 0.005e-7, "OpenStax, College Physics 2e, section 27.6, example of a space telescope")]
    [InlineData(3.00, 550, 2.24e-4, 0.005e-4, "OpenStax, University Physics 3, chapter 4, the eye at night")]
    [InlineData(50.0, 600, 1.46e-5, 0.005e-5, "OpenStax, College Physics 2e, chapter 27, problem 59")]
    [InlineData(2540, 633, 3.04e-7, 0.005e-7, "OpenStax, College Physics 2e, chapter 27, problem 61")]
    [InlineData(1.00, 633, 7.72e-4, 0.005e-4, "OpenStax, University Physics 3, chapter 4, a laser beam of 1 mm")]
    public void Rayleighs_limit_is_the_textbooks_in_radians(
        double apertureMm, double wavelengthNm, double publishedRadians, double halfLastPlace, string source) =>
        Published.Agrees(publishedRadians, RayleighRadians(apertureMm, wavelengthNm), halfLastPlace, source);

    [Theory]
    [InlineData(5000, 384_000_000, 51.5, 0.05, "OpenStax, College Physics 2e, chapter 27, problem 63: details on the Moon")]
    [InlineData(2.0, 180_000, 60, 0.5, "OpenStax, University Physics 3, chapter 4: 2.0 m from 180 km")]
    [InlineData(1.30, 5810, 3.00, 0.005, "OpenStax, University Physics 3, chapter 4: headlights, resolved by the eye")]
    public void The_aperture_that_resolves_a_detail_is_the_textbooks(
        double detailMetres, double distanceMetres, double publishedMm, double halfLastPlace, string source)
    {
        var apertureMm = RayleighRadians(1, WavelengthNm) / (detailMetres / distanceMetres);
        Published.Agrees(publishedMm, apertureMm, halfLastPlace, source);
    }

    [Theory]
    [InlineData(60, 2.307, 1.933)]
    [InlineData(80, 1.730, 1.450)]
    [InlineData(100, 1.384, 1.160)]
    [InlineData(114, 1.214, 1.018)]
    [InlineData(130, 1.065, 0.892)]
    [InlineData(150, 0.923, 0.773)]
    [InlineData(200, 0.692, 0.580)]
    [InlineData(250, 0.554, 0.464)]
    [InlineData(300, 0.461, 0.387)]
    public void Both_limits_follow_derived_tables(double apertureMm, double rayleighArcsec, double dawesArcsec)
    {
        const double HalfLastPlace = 0.0005;
        // The constant is printed as 116 (Sky & Telescope, June 2019, p. 37); 4.56 inches are 115.8.
        const double RoundingOfConstant = 0.3 / 116;
        var telescope = Some.Telescope(apertureMm);

        Derived.Agrees(rayleighArcsec, telescope.RayleighArcsec, HalfLastPlace, "1.22 wavelengths of 550 nm");
        Derived.Agrees(dawesArcsec, telescope.DawesArcsec, HalfLastPlace + (RoundingOfConstant * dawesArcsec), "116 / D");
    }

    [Fact]
    public void Dawes_limit_is_4_56_arcseconds_for_an_inch()
    {
        // H. L. Cohen, "Dawes' limit" (2001), after W. R. Dawes, Mem. R. Astron. Soc. 35 (1867) 137.
        const double HalfLastPlace = 0.005;
        const double InchMm = 25.4;
        const double ApertureInches = 4;
        var perInch = Some.Telescope(ApertureInches * InchMm).DawesArcsec * ApertureInches;
        Published.Agrees(4.56, perInch, HalfLastPlace, "H. L. Cohen 2001");
    }

    private static double RayleighRadians(double apertureMm, double wavelengthNm)
    {
        const double ModelApertureMm = 100;
        var arcsec = Some.Telescope(ModelApertureMm).RayleighArcsec * (ModelApertureMm / apertureMm) * (wavelengthNm / WavelengthNm);
        return arcsec / Published.ArcsecPerRadian;
    }
}
