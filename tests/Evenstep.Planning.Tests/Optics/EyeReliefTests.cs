using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

/// <summary>
/// 15, 8 and 5 mm are common practice, no source; 9 to 10 mm clear the lashes (W. J. Smith, Modern Lens Design), so that less than
/// 10 mm is told as tight, and below 5 mm nothing is sold.
/// </summary>
public sealed class EyeReliefTests
{
    private const double WidePupilMm = 5;

    /// <summary>Below the 1.049 mm up to which one dioptre of cylinder may do without spectacles.</summary>
    private const double NarrowPupilMm = 1;

    [Theory]
    [InlineData(false, null, true, 5)]
    [InlineData(false, null, false, 0)]
    [InlineData(true, null, true, 15)]
    [InlineData(true, null, false, 15)]
    [InlineData(false, 12.0, true, 12)]
    [InlineData(false, 12.0, false, 12)]
    [InlineData(true, 18.0, false, 18)]
    [InlineData(true, 5.0, true, 5)]
    public void What_is_asked_goes_before_spectacles_and_they_before_comfort(
        bool spectacles, double? least, bool bought, double needed)
    {
        var observer = new Observer { WearsSpectacles = spectacles, LeastEyeReliefMm = least };
        Assert.Equal(needed, observer.NeededEyeReliefMm(WidePupilMm, bought));
    }

    [Theory]
    [InlineData(WidePupilMm, true, null, 15)]
    [InlineData(WidePupilMm, false, 18.0, 18)]
    [InlineData(NarrowPupilMm, true, null, 5)]
    [InlineData(NarrowPupilMm, false, null, 0)]
    [InlineData(NarrowPupilMm, true, 18.0, 5)]
    [InlineData(NarrowPupilMm, false, 18.0, 0)]
    [InlineData(NarrowPupilMm, true, 4.0, 4)]
    public void At_a_narrow_exit_pupil_spectacles_against_astigmatism_come_off(
        double exitPupilMm, bool bought, double? least, double needed)
    {
        var observer = new Observer { WearsSpectacles = true, AstigmatismDioptres = -1, LeastEyeReliefMm = least };
        Assert.Equal(needed, observer.NeededEyeReliefMm(exitPupilMm, bought));
    }

    [Fact]
    public void The_exit_pupil_of_the_criterion_itself_needs_no_spectacles()
    {
        var observer = new Observer { WearsSpectacles = true, AstigmatismDioptres = 1.1 };
        Assert.Equal(1, observer.SpectaclesOffUpToExitPupilMm!.Value, Tolerance.Value);
        Assert.Equal(5, observer.NeededEyeReliefMm(1, bought: true));
        Assert.Equal(15, observer.NeededEyeReliefMm(1.001, bought: true));
    }

    [Fact]
    public void Without_astigmatism_spectacles_are_never_needed()
    {
        var observer = new Observer { WearsSpectacles = true, AstigmatismDioptres = 0 };
        Assert.Equal(5, observer.NeededEyeReliefMm(8, bought: true));
        Assert.Equal(0, observer.NeededEyeReliefMm(8, bought: false));
    }

    [Fact]
    public void Astigmatism_of_someone_without_spectacles_changes_nothing()
    {
        var observer = new Observer { AstigmatismDioptres = 1, LeastEyeReliefMm = 12 };
        Assert.Null(observer.SpectaclesOffUpToExitPupilMm);
        Assert.Equal(12, observer.NeededEyeReliefMm(NarrowPupilMm, bought: true));
    }

    [Theory]
    [InlineData(25, NotUsable.EyeRelief)] // 2.5 mm of exit pupil
    [InlineData(10, null)] // 1 mm
    public void A_view_asks_for_the_eye_relief_of_its_own_exit_pupil(double focalLengthMm, NotUsable? expected)
    {
        var observer = new Observer { WearsSpectacles = true, AstigmatismDioptres = 1 };
        var view = View.Of(Some.Unbounded(), new Eyepiece(focalLengthMm, 50, 10, Barrel.Inch125))!.Value;
        Assert.Equal(expected, view.NotUsableBecause(observer, null, bought: true));
    }

    [Theory]
    [InlineData(1, null)] // 25 mm through a tripler: 0.83 mm
    [InlineData(2, NotUsable.EyeRelief)] // above the 0.74 mm of two dioptres
    public void A_view_through_a_barlow_has_the_narrower_exit_pupil(double cylinder, NotUsable? expected)
    {
        var observer = new Observer { WearsSpectacles = true, AstigmatismDioptres = cylinder };
        var view = View.Of(Some.Unbounded(), new Eyepiece(25, 50, 10, Barrel.Inch125), new Barlow([3], Barrel.Inch125), 3)!.Value;
        Assert.Equal(expected, view.NotUsableBecause(observer, null, bought: true));
    }

    [Fact]
    public void A_zoom_is_judged_by_the_exit_pupil_at_its_longest_focal_length()
    {
        var observer = new Observer { WearsSpectacles = true, AstigmatismDioptres = 1 };
        var view = View.Of(Some.Unbounded(), new Zoom(8, 24, 60, 42, 10, Barrel.Inch125))!.Value;
        Assert.Equal(2.4, view.ExitPupilMm, Tolerance.Value);
        Assert.Equal(NotUsable.EyeRelief, view.NotUsableBecause(observer, null, bought: true));
    }
}
