using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

/// <summary>What is assumed is common practice, no source.</summary>
[Trait("Basis", "Common practice, no source")]
public sealed class AssumedFiguresTests
{
    [Theory]
    [InlineData(10, 7)]
    [InlineData(28, 19.6)]
    [InlineData(40, 20)]
    public void Eye_relief_is_seven_tenths_of_the_focal_length_but_at_most_20_mm(double focalLengthMm, double expected) =>
        Assert.Equal(expected, Eyepiece.Of(focalLengthMm, 50, null, null, Barrel.Inch125).EyeReliefMm, Tolerance.Value);

    [Theory]
    [InlineData(20, null, 50)]
    [InlineData(20, 20.0, 57.3)]
    [InlineData(32, 27.0, 57.3 * 27 / 32)]
    [InlineData(50, 5.0, 10)] // 5.73, but at least 10
    [InlineData(5, 20.0, 130)] // 229.2, but at most 130
    public void The_apparent_field_follows_the_field_stop_or_is_50_degrees(double focalLengthMm, double? fieldStopMm, double expected) =>
        Assert.Equal(expected, Eyepiece.Of(focalLengthMm, null, 16, fieldStopMm, Barrel.Inch125).ApparentFieldDeg, Tolerance.Value);

    /// <summary>Without distortion of angular magnification a field is S / f wide in radians: geometry, derived.</summary>
    [Fact]
    public void The_factor_is_the_degrees_in_a_radian_as_the_trade_rounds_them() =>
        Assert.Equal(180 / Math.PI, AssumedFigures.ApparentFieldDeg(20, 20), 0.005);

    [Fact]
    public void What_is_known_is_not_assumed()
    {
        var known = Eyepiece.Of(20, 68, 12, 22, Barrel.Inch125);
        Assert.Equal((68, 12, false, false), (known.ApparentFieldDeg, known.EyeReliefMm, known.IsApparentFieldAssumed, known.IsEyeReliefAssumed));
    }

    [Fact]
    public void What_is_assumed_is_marked()
    {
        Assert.True(Eyepiece.Of(20, null, 12, null, Barrel.Inch125) is { IsApparentFieldAssumed: true, IsEyeReliefAssumed: false });
        Assert.True(Eyepiece.Of(20, 68, null, null, Barrel.Inch125) is { IsApparentFieldAssumed: false, IsEyeReliefAssumed: true });
    }

    /// <summary>A 7 mm of unknown eye relief is taken to have 4.9 mm, and a 7.2 mm to have 5.04.</summary>
    [Theory]
    [InlineData(7, NotUsable.EyeRelief)]
    [InlineData(7.2, null)]
    public void Assumed_figures_decide_like_known_ones(double focalLengthMm, NotUsable? expected)
    {
        var view = View.Of(Some.Unbounded(), Eyepiece.Of(focalLengthMm, null, null, null, Barrel.Inch125))!.Value;
        Assert.Equal(expected, view.NotUsableBecause(new Observer(), null, bought: true));
    }
}
