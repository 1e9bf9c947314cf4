using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

public sealed class PublishedTrueFieldTests
{
    [Theory]
    [InlineData(27, 650, 2.37964, 569.55)]
    [InlineData(46, 650, 4.05309, 970.09)]
    [InlineData(27, 1000, 1.54689, 370.24)]
    [InlineData(27, 1200, 1.28910, 308.54)]
    [InlineData(46, 1200, 2.19607, 525.62)]
    [InlineData(27, 2000, 0.77348, 185.13)]
    [InlineData(46, 2000, 1.31774, 315.40)]
    public void A_field_stop_gives_true_field_and_drift_as_worked_out_apart(
        double stopMm, double telescopeMm, double degrees, double driftSeconds)
    {
        // Derived apart from this code; widest field stops of the two barrels: common practice, no source.
        const double HalfLastPlaceOfDegrees = 0.000005;
        const double HalfLastPlaceOfSeconds = 0.005;
        const string Source = "2 atan(S / 2F)";
        var view = WithStop(stopMm, telescopeMm);

        Derived.Agrees(degrees, view.TrueFieldDeg, HalfLastPlaceOfDegrees, Source);
        Derived.Agrees(driftSeconds, view.DriftSeconds, HalfLastPlaceOfSeconds, Source);
        Assert.Equal(TrueFieldSource.FieldStop, view.TrueFieldFrom);
    }

    [Theory]
    [InlineData(27, 650)]
    [InlineData(46, 650)]
    [InlineData(27, 2000)]
    public void For_small_fields_the_arc_and_its_tangent_agree(double stopMm, double telescopeMm)
    {
        const double RelativeDifference = 0.001;
        var byArc = 180 / Math.PI * stopMm / telescopeMm;

        Derived.Agrees(byArc, WithStop(stopMm, telescopeMm).TrueFieldDeg, RelativeDifference * byArc, "57.2958 S / F");
    }

    [Fact]
    public void Without_a_field_stop_the_true_field_is_apparent_field_over_power()
    {
        // R. B. and B. F. Thompson, Astronomy Hacks, O'Reilly 2005, chapter 4 (authors' names from memory).
        const string Source = "Astronomy Hacks, field-of-view hack";
        const double HalfLastPlaceOfDegrees = 0.00005;
        const double HalfLastPlaceOfArcminutes = 0.05;
        var view = View.Of(Some.Unbounded(focalLengthMm: 1200), new Eyepiece(25, 50, 16, Barrel.Inch125))!.Value;

        Published.Agrees(48, view.Power, Published.Rounding, Source);
        Published.Agrees(1.0417, view.TrueFieldDeg, HalfLastPlaceOfDegrees, Source);
        Published.Agrees(62.5, view.TrueFieldDeg * 60, HalfLastPlaceOfArcminutes, Source);
        Assert.Equal(TrueFieldSource.ApparentField, view.TrueFieldFrom);
    }

    [Theory]
    [InlineData(32, 27, "1.25 in")]
    [InlineData(55, 46, "2 in")]
    public void Both_formulas_agree_as_far_as_distortion_lets_them(double eyepieceMm, double stopMm, string barrel)
    {
        // Which distortion an eyepiece has decides between tangent and arc: they are never the same to better than this.
        const double RelativeDifference = 0.10;
        const double ApparentFieldDeg = 50;
        var telescope = Some.Unbounded();
        var byStop = View.Of(telescope, new Eyepiece(eyepieceMm, ApparentFieldDeg, 16, Barrel.Inch2) { FieldStopMm = stopMm })!.Value;
        var byField = View.Of(telescope, new Eyepiece(eyepieceMm, ApparentFieldDeg, 16, Barrel.Inch2))!.Value;

        Derived.Agrees(byField.TrueFieldDeg, byStop.TrueFieldDeg, RelativeDifference * byField.TrueFieldDeg, barrel);
    }

    private static View WithStop(double stopMm, double telescopeMm) => View.Of(
        Some.Unbounded(focalLengthMm: telescopeMm), new Eyepiece(30, 60, 16, Barrel.Inch2) { FieldStopMm = stopMm })!.Value;
}
