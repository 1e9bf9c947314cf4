using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

/// <summary>All thresholds are common practice, no source.</summary>
[Trait("Basis", "Common practice, no source")]
public sealed class QualityTests
{
    [Theory]
    [InlineData(Drawbacks.None, 4)]
    [InlineData(Drawbacks.SteepCone, 2)]
    [InlineData(Drawbacks.WideExitPupil, 2)]
    [InlineData(Drawbacks.SteepCone | Drawbacks.NarrowField, 0)]
    [InlineData(Drawbacks.SteepCone | Drawbacks.NarrowField | Drawbacks.TightEyeRelief, 0)]
    public void Each_of_two_drawbacks_takes_half(Drawbacks drawbacks, int quarters) =>
        Assert.All([Prefer.Comfort, Prefer.LightWeight, Prefer.Parfocal], prefer => Assert.Equal(quarters, Quality.Of(prefer, Of(60, 16), drawbacks)));

    [Theory]
    [InlineData(49.9, 0)]
    [InlineData(50, 1)]
    [InlineData(60, 2)]
    [InlineData(70, 3)]
    [InlineData(81.9, 3)]
    [InlineData(82, 4)]
    public void Where_wide_fields_are_preferred_the_field_bounds_it(double fieldDeg, int quarters)
    {
        Assert.Equal(quarters, Quality.Of(Prefer.WideField, Of(fieldDeg, 16), Drawbacks.None));
        Assert.Equal(Math.Min(2, quarters), Quality.Of(Prefer.WideField, Of(fieldDeg, 16), Drawbacks.SteepCone));
        Assert.Equal(quarters, Quality.Of(Prefer.WideField, new Zoom(8, 24, 100, fieldDeg, 16, Barrel.Inch125), Drawbacks.None));
        Assert.Equal(4, Quality.Of(Prefer.Comfort, Of(fieldDeg, 16), Drawbacks.None));
    }

    [Theory]
    [InlineData(7.9, 0)]
    [InlineData(8, 1)]
    [InlineData(12, 2)]
    [InlineData(15, 3)]
    [InlineData(17.9, 3)]
    [InlineData(18, 4)]
    public void Where_long_eye_relief_is_preferred_it_bounds_it(double eyeReliefMm, int quarters)
    {
        Assert.Equal(quarters, Quality.Of(Prefer.LongEyeRelief, Of(60, eyeReliefMm), Drawbacks.None));
        Assert.Equal(0, Quality.Of(Prefer.LongEyeRelief, Of(60, eyeReliefMm), Drawbacks.SteepCone | Drawbacks.NarrowField));
    }

    /// <summary>From 50 to 200 times, all of weight 1: an axis of ln 4. A view of 100 times lies in its middle and serves from ln 1.5 to either side.</summary>
    [Theory]
    [InlineData(60, 16, 1)]
    [InlineData(40, 16, 0.5)]
    [InlineData(40, 9, 0)]
    public void The_measure_of_one_view_is_its_quality_times_what_it_reaches(double fieldDeg, double eyeReliefMm, double quality)
    {
        var problem = Some.Problem(Some.InUse(lowest: 50, highest: 200), catalogue: [Some.Eyepiece(10, fieldDeg, eyeReliefMm)]);
        var measure = QualityMeasure.Of(problem, [0], Step.Of(1.8));
        Assert.Equal(quality * Math.Log(1.8) / Math.Log(4), measure.Of(Kit.Of(problem, [.. problem.Catalogue.Items])), Tolerance.Value);
        Assert.Equal(0, measure.Of(Kit.Of(problem, [])));
    }

    /// <summary>Where both reach, the better counts.</summary>
    [Fact]
    public void A_position_has_the_quality_of_the_best_view_near_it()
    {
        Item[] items = [Some.Eyepiece(10, 60, id: "good"), Some.Eyepiece(12, 40, id: "narrow")];
        var problem = Some.Problem(Some.InUse(lowest: 50, highest: 200), catalogue: [.. items]);
        var kit = Kit.Of(problem, [.. items]);
        Assert.Equal(
            (Math.Log(1.5) + (0.5 * Math.Log(1.2))) / Math.Log(4), QualityMeasure.Of(problem, [0], Step.Of(1.5)).Of(kit), Tolerance.Value);
    }

    /// <summary>An owned view in the middle leaves ln 4 - ln 1.5 that needs something, which is more than half of the axis.</summary>
    [Fact]
    public void What_is_owned_already_is_not_bought_again_for_comfort()
    {
        var problem = Some.Problem(
            Some.InUse(lowest: 50, highest: 200), owned: [Some.Eyepiece(10, 40, 5)], catalogue: [Some.Eyepiece(10, 60, id: "same"), Some.Eyepiece(5, 60)]);
        var measure = QualityMeasure.Of(problem, [0], Step.Of(1.5));
        Assert.Equal(0, measure.Of(Kit.Of(problem, [problem.Catalogue.Items.Single(item => item.Id == "same")])), Tolerance.Value);
        var atTheEnd = measure.Of(Kit.Of(problem, [problem.Catalogue.Items.Single(item => item.Id != "same")]));
        Assert.Equal(Math.Log(1.5) / 2 / (Math.Log(4) - Math.Log(1.5)), atTheEnd, Tolerance.Value);
    }

    /// <summary>Owned views of 60 and 90 times leave from 90 sqrt(1.5) to 200, less than half the axis: over that half it is shared out.</summary>
    [Fact]
    public void Where_little_needs_anything_it_is_shared_out_over_half_the_axis()
    {
        var problem = Some.Problem(
            Some.InUse(lowest: 50, highest: 200), owned: [Some.Eyepiece(1000.0 / 60), Some.Eyepiece(1000.0 / 90)], catalogue: [Some.Eyepiece(5)]);
        var needed = Math.Log(200 / 90.0) - (Math.Log(1.5) / 2);
        Assert.True(needed < Math.Log(4) / 2);
        Assert.Equal(
            Math.Log(1.5) / 2 / (Math.Log(4) / 2),
            QualityMeasure.Of(problem, [0], Step.Of(1.5)).Of(Kit.Of(problem, [.. problem.Catalogue.Items])),
            Tolerance.Value);
    }

    [Fact]
    public void A_view_reaches_half_the_step_that_is_allowed_but_never_less_than_it_serves()
    {
        var problem = Some.Problem(Some.InUse(lowest: 50, highest: 200), catalogue: [Some.Eyepiece(10)]);
        Assert.Equal(Math.Log(1.5) / 2, QualityMeasure.Of(problem, [0], Step.Of(1.1)).Radius, Tolerance.Value);
        Assert.Equal(Math.Log(3) / 2, QualityMeasure.Of(problem, [0], Step.Of(3)).Radius, Tolerance.Value);
    }

    private static Eyepiece Of(double fieldDeg, double eyeReliefMm) => new(20, fieldDeg, eyeReliefMm, Barrel.Inch125);
}
