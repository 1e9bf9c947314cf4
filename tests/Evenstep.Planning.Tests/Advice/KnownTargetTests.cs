using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Advice;

public sealed class KnownTargetTests
{
    [Fact]
    public void Each_has_an_id_and_a_name_of_its_own_and_lies_within_bounds()
    {
        Assert.Equal(KnownTarget.All.Length, KnownTarget.All.Select(known => known.Id).Distinct().Count());
        Assert.Equal(KnownTarget.All.Length, KnownTarget.All.Select(known => known.Target.Name).Distinct().Count());
        Assert.All(KnownTarget.All, known => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", known.Id));
        Assert.All(KnownTarget.All, known => Assert.True(Bounds.TargetWidthArcmin.Contain(known.Target.WidthArcmin)));
        Assert.All(KnownTarget.All, known => Assert.True(Bounds.WantedExitPupilMm.Contain(known.Target.WantedExitPupilMm)));
    }

    [Fact]
    public void They_are_listed_by_kind_the_widest_first()
    {
        var kinds = KnownTarget.All.Select(known => known.Kind).ToList();
        Assert.Equal(kinds.Order(), kinds);
        Assert.All(KnownTarget.All.GroupBy(known => known.Kind).Where(group => group.Key != TargetKind.Planet), group =>
            Assert.Equal(group.OrderByDescending(known => known.Target.WidthArcmin), group));
    }

    [Fact]
    public void The_wanted_exit_pupil_is_that_of_the_kind() =>
        Assert.All(KnownTarget.All, known => Assert.Equal(KnownTarget.WantedExitPupilMm(known.Kind), known.Target.WantedExitPupilMm));

    /// <summary>Sizes in visible light in arcminutes: those of the data of d3-celestial.</summary>
    [Theory]
    [InlineData("m-31", 190)]
    [InlineData("m-45", 110)]
    [InlineData("m-42", 66)]
    [InlineData("m-13", 17)]
    [InlineData("m-57", 1)]
    public void A_width_is_the_customary_one_where_d3_celestial_has_the_object(string id, double arcmin) => AssertWidth(id, arcmin, WidthSource.D3Celestial);

    /// <summary>The longer axis by the OpenNGC database, in arcminutes.</summary>
    [Theory]
    [InlineData("ngc-7000", 120)]
    [InlineData("ngc-253", 26.8)]
    [InlineData("ngc-5139", 27)]
    [InlineData("ngc-7662", 0.28)]
    public void Else_it_is_that_of_OpenNgc(string id, double arcmin) => AssertWidth(id, arcmin, WidthSource.OpenNgc);

    /// <summary>The Moon's apparent diameter lies between 29.4 and 33.5 arcminutes.</summary>
    [Fact]
    public void The_moon_has_its_mean_width() => AssertWidth("moon", 31.45, WidthSource.MeanOfRange);

    private static void AssertWidth(string id, double arcmin, WidthSource from)
    {
        var known = KnownTarget.All.Single(one => one.Id == id);
        Assert.Equal((arcmin, from), (Math.Round(known.Target.WidthArcmin, 6), known.WidthFrom));
    }
}
