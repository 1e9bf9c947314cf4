using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

public sealed class PublishedPowerTests
{
    private const string Ucf = "University of Central Florida, AST 3722C, Spring 2008, Lab 3 and its solutions";

    [Theory]
    [InlineData(1000, 25, 40.0, 0.05, "OpenStax, College Physics 2e, chapter 26, problem 33 (without the sign of inversion)")]
    [InlineData(750, 100, 7.50, 0.005, "OpenStax, College Physics 2e, chapter 26, problem 37")]
    [InlineData(1000, 25, 40, 0.5, "OpenStax, University Physics 3, section 2.8, the longer eyepiece")]
    [InlineData(1000, 12.5, 80, 0.5, "OpenStax, University Physics 3, section 2.8, the shorter eyepiece")]
    [InlineData(500, 20, 25, 0.5, "AP item on a telescope of 500 mm")]
    public void Power_is_focal_length_over_focal_length(
        double telescopeMm, double eyepieceMm, double published, double halfLastPlace, string source) =>
        Published.Agrees(published, PowerOf(telescopeMm, eyepieceMm), halfLastPlace, source);

    [Theory]
    [InlineData(10_000, 30, 167, 0.5, "OpenStax, College Physics 2e, chapter 26, problem 35")]
    public void A_mirror_has_half_its_radius_of_curvature_for_a_focal_length(
        double radiusMm, double eyepieceMm, double published, double halfLastPlace, string source) =>
        Published.Agrees(published, PowerOf(radiusMm / 2, eyepieceMm), halfLastPlace, source);

    [Fact]
    public void So_it_is_where_no_answer_is_printed() =>
        Derived.Agrees(25, PowerOf(2000 / 2, 40), Published.Rounding, "OpenStax, College Physics 2e, chapter 26, problem 36");

    [Theory]
    [InlineData(40, 44, 50, 53)]
    [InlineData(32, 52, 62.5, 50)]
    [InlineData(26, 52, 76.9, 41)]
    [InlineData(20, 52, 100, 31)]
    [InlineData(15, 52, 133.3, 24)]
    [InlineData(12.4, 52, 161.3, 19)]
    [InlineData(9.7, 52, 206.2, 15)]
    [InlineData(6.4, 52, 312.5, 10)]
    public void Eight_eyepieces_have_the_powers_and_fields_of_a_published_table(
        double eyepieceMm, double apparentFieldDeg, double power, double trueFieldArcmin)
    {
        const double HalfLastPlace = 0.05;
        const double OneArcminute = 1; // One field is printed rounded up.
        var view = View.Of(Some.Unbounded(focalLengthMm: 2000), new Eyepiece(eyepieceMm, apparentFieldDeg, 16, Barrel.Inch125))!.Value;

        Published.Agrees(power, view.Power, HalfLastPlace, Ucf);
        Published.Agrees(trueFieldArcmin, view.TrueFieldDeg * 60, OneArcminute, Ucf);
        Assert.Equal(TrueFieldSource.ApparentField, view.TrueFieldFrom);
    }

    [Fact]
    public void A_field_of_half_a_degree_seen_as_thirty_has_a_ratio_of_focal_lengths_of_61_4()
    {
        // telescope-optics.net, section 2.3: the ratio of the angles is 60, that of the focal lengths is of their tangents.
        const double PublishedRatio = 61.4;
        const double HalfLastPlaceOfRatio = 0.05 / PublishedRatio;
        const double EyepieceMm = 20;
        var stopMm = 2 * EyepieceMm * Math.Tan(Radians(15));
        var eyepiece = new Eyepiece(EyepieceMm, 30, 16, Barrel.Inch125) { FieldStopMm = stopMm };
        var view = View.Of(Some.Unbounded(focalLengthMm: PublishedRatio * EyepieceMm), eyepiece)!.Value;

        Derived.Agrees(PublishedRatio, view.Power, Published.Rounding, "telescope-optics.net, section 2.3");
        Published.Agrees(0.5, view.TrueFieldDeg, 0.5 * HalfLastPlaceOfRatio, "telescope-optics.net, section 2.3");
    }

    private static double PowerOf(double telescopeMm, double eyepieceMm) =>
        View.Of(Some.Unbounded(focalLengthMm: telescopeMm), new Eyepiece(eyepieceMm, 50, 16, Barrel.Inch125))!.Value.Power;

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
