using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

/// <summary>
/// A lower power that shows hardly more sky: the ratios 1.5 and 1.1 and the exit pupil of 2 mm are common practice, no source.
/// The telescope is f/10, so that 20 mm of focal length make 2 mm of exit pupil.
/// </summary>
public sealed class SkyOverlapTests
{
    private const double LeastStep = 1.15;

    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    /// <summary>32 mm of 50 degrees take in 1.6 degrees; 24 mm of 68 take in 1.63.</summary>
    [Fact]
    public void A_32_mm_of_50_degrees_shows_hardly_more_sky_than_an_owned_24_mm_of_68() => AssertOverlap(
        true, Bought(Some.Eyepiece(32, 50)), Owned(Some.Eyepiece(24, 68)));

    [Fact]
    public void And_hardly_more_than_one_that_is_bought_too() => AssertOverlap(
        true, Bought(Some.Eyepiece(32, 50)), Bought(Some.Eyepiece(24, 68)));

    [Fact]
    public void An_owned_32_mm_of_50_degrees_is_not_held_against_a_24_mm_of_68_being_bought() => AssertOverlap(
        false, Owned(Some.Eyepiece(32, 50)), Bought(Some.Eyepiece(24, 68)));

    [Theory]
    [InlineData(33, true)] // 0.825 degrees
    [InlineData(43.9, true)]
    [InlineData(44, false)] // exactly 1.1 times the one degree of the other
    [InlineData(60, false)]
    public void A_tenth_more_of_true_field_is_more_sky(double apparentFieldDeg, bool overlap) => AssertOverlap(
        overlap, Bought(Some.Eyepiece(25, apparentFieldDeg)), Owned(Some.Eyepiece(20, 50)));

    [Theory]
    [InlineData(25, true)]
    [InlineData(29.9, true)]
    [InlineData(30, false)] // exactly 1.5
    [InlineData(40, false)]
    public void Only_powers_in_a_ratio_under_one_and_a_half_are_near(double focalLengthMm, bool overlap) => AssertOverlap(
        overlap, Bought(Some.Eyepiece(focalLengthMm, 30)), Owned(Some.Eyepiece(20, 60)));

    [Theory]
    [InlineData(20, true)] // exactly 2 mm
    [InlineData(19.9, false)]
    public void Only_low_powers_are_bought_for_the_sky(double focalLengthMm, bool overlap) => AssertOverlap(
        overlap, Bought(Some.Eyepiece(focalLengthMm, 40)), Owned(Some.Eyepiece(15, 60)));

    [Fact]
    public void Equal_powers_are_not_less_power() => AssertOverlap(
        false, Bought(Some.Eyepiece(24, 68)), Owned(Some.Eyepiece(24, 50, id: "owned")));

    /// <summary>49 and 41 mm both count as 25x, and yet have a ratio of 1.2; 49 and 32 mm have one of 1.53, though cut one of 1.25.</summary>
    [Fact]
    public void Real_powers_count_and_not_those_cut_to_the_range()
    {
        AssertOverlap(false, Bought(Some.Eyepiece(49, 40)), Owned(Some.Eyepiece(32, 70)));
        AssertOverlap(true, Bought(Some.Eyepiece(47, 40)), Owned(Some.Eyepiece(32, 70)));
    }

    [Fact]
    public void Through_a_barlow_nothing_is_bought_for_the_sky()
    {
        var lower = Some.Eyepiece(60, 40);
        AssertOverlap(false, Bought(lower, Some.Barlow(2)), Owned(Some.Eyepiece(22, 68)));
        AssertOverlap(false, Bought(Some.Eyepiece(32, 40)), Owned(Some.Eyepiece(48, 68), Some.Barlow(2)));
    }

    private static void AssertOverlap(bool expected, KitView a, KitView b)
    {
        Assert.Equal(expected, Overlap.Between(a.Showing, b.Showing, Step.Of(LeastStep)));
        Assert.Equal(expected, Overlap.Between(b.Showing, a.Showing, Step.Of(LeastStep)));
    }

    private static KitView Bought(Item eyepiece, Item? barlow = null) => ViewOf(eyepiece, true, barlow);

    private static KitView Owned(Item eyepiece, Item? barlow = null) => ViewOf(eyepiece, false, barlow);

    private static KitView ViewOf(Item eyepiece, bool isBought, Item? barlow)
    {
        var view = barlow?.Optic is Barlow optic
            ? View.Of(From25To200, eyepiece.Ocular!, optic, optic.Factors[0])
            : View.Of(From25To200, eyepiece.Ocular!);
        Assert.Null(view!.Value.NotUsableBecause(new Observer(), null, isBought));
        return new KitView(Some.Problem(From25To200), eyepiece, isBought, barlow, barlowIsBought: false, view.Value);
    }
}
