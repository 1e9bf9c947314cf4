using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

public sealed class SpectaclesCautionsTests
{
    private static readonly Telescope Scope = Some.Telescope(100, 1000);

    /// <summary>At half a dioptre they may come off up to 1.48 mm: from 67x up.</summary>
    private static readonly Observer HalfADioptre = new() { WearsSpectacles = true, AstigmatismDioptres = 0.5 };

    [Fact]
    public void An_eyepiece_for_which_the_spectacles_must_come_off_is_named_with_its_powers()
    {
        var off = Told(HalfADioptre, Some.Eyepiece(10, eyeReliefMm: 6.6, id: "short"), Some.Eyepiece(8, eyeReliefMm: 15, id: "long"), Some.Barlow(1.5))
            .Single(caution => caution.Code == Cautions.SpectaclesOff);

        Assert.Equal(["short"], (string[])ValueOf(off, "itemIds"));
        Assert.Equal([100.0, 150.0], ((double[][])ValueOf(off, "powers")).Single());
    }

    [Fact]
    public void From_which_power_on_they_may_come_off_is_told()
    {
        var eyesight = Told(HalfADioptre, Some.Eyepiece(20, eyeReliefMm: 16), Some.Eyepiece(10)).Single(caution => caution.Code == Cautions.Eyesight);

        Assert.Equal(SpectaclesCautions.ComeOff, eyesight.Variant);
        Assert.Equal(100 / Math.Sqrt(2.2), (double)((object?[])ValueOf(eyesight, "fromPowers")).Single()!, 9);
    }

    [Fact]
    public void Without_a_cylinder_they_may_come_off_at_every_power()
    {
        var eyesight = Told(new Observer { WearsSpectacles = true, AstigmatismDioptres = 0 }, Some.Eyepiece(20)).Single(one => one.Code == Cautions.Eyesight);

        Assert.Null(((object?[])ValueOf(eyesight, "fromPowers")).Single());
    }

    [Theory]
    [InlineData(null)]
    [InlineData(2.0)]
    public void Where_they_come_off_at_no_power_they_are_kept_on(double? cylinder)
    {
        var cautions = Told(new Observer { WearsSpectacles = true, AstigmatismDioptres = cylinder }, Some.Eyepiece(20, eyeReliefMm: 16));

        Assert.Equal(SpectaclesCautions.KeptOn, cautions.Single(one => one.Code == Cautions.Eyesight).Variant);
        Assert.DoesNotContain(cautions, one => one.Code == Cautions.SpectaclesOff);
    }

    [Fact]
    public void A_zoom_turned_past_the_range_has_no_narrow_exit_pupil_and_an_eyepiece_that_has_one_is_named()
    {
        Assert.DoesNotContain(Told(new Observer(), Some.Zoom(4, 12)), one => one.Code == Cautions.ExitPupilNarrow);

        var narrow = Told(new Observer(), Some.Eyepiece(6.5, id: "narrow")).Single(one => one.Code == Cautions.ExitPupilNarrow);

        Assert.Equal(["narrow"], (string[])ValueOf(narrow, "itemIds"));
    }

    private static ImmutableArray<Remark> Told(Observer observer, params Item[] bought) =>
        Cautions.Of(Kit.Of(Some.Problem(Some.InUse(Scope, lowest: 40, highest: 142), observer: observer), [.. bought]));

    private static object ValueOf(Remark remark, string name) => remark.Values.Single(value => value.Name == name).Value!;
}
