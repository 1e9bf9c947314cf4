using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

/// <summary>The ratios 1.15, 1.25, 1.5 and 1.1 and the exit pupil of 2 mm are common practice, no source.</summary>
public sealed class OverlapTests
{
    private const double LeastStep = 1.15;

    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Theory]
    [InlineData(20, 20, true)]
    [InlineData(20, 21, true)]
    [InlineData(20, 22.99, true)]
    [InlineData(20, 23, false)] // exactly 1.15
    [InlineData(13, 20, false)]
    public void Two_eyepieces_repeat_one_another_below_the_least_step(double first, double second, bool overlap) =>
        AssertOverlap(overlap, Alone(Some.Eyepiece(first)), Alone(Some.Eyepiece(second, id: "other")));

    [Theory]
    [InlineData(50, 62.4, true)]
    [InlineData(50, 62.5, true)] // exactly 1.25
    [InlineData(50, 62.6, false)]
    [InlineData(50, 100, false)]
    public void A_much_wider_field_at_the_same_power_is_an_upgrade_of_what_is_owned(double owned, double bought, bool overlap) =>
        AssertOverlap(overlap, Owned(Some.Eyepiece(20, owned)), Alone(Some.Eyepiece(20, bought, id: "other")));

    [Theory]
    [InlineData(62.6, 50)]
    [InlineData(100, 50)]
    public void A_much_narrower_field_than_what_is_owned_is_none(double owned, double bought) =>
        AssertOverlap(true, Owned(Some.Eyepiece(20, owned)), Alone(Some.Eyepiece(20, bought, id: "other")));

    [Fact]
    public void Of_two_being_bought_neither_is_an_upgrade_of_the_other() =>
        AssertOverlap(true, Alone(Some.Eyepiece(20, 50)), Alone(Some.Eyepiece(20, 100, id: "other")));

    [Theory]
    [InlineData(62.5, true)] // exactly 1.25
    [InlineData(62.6, false)]
    public void Two_owned_ones_do_not_repeat_one_another_if_their_fields_are_far_apart(double otherDeg, bool overlap) =>
        AssertOverlap(overlap, Owned(Some.Eyepiece(20, 50)), Owned(Some.Eyepiece(20, otherDeg, id: "other")));

    [Theory]
    [InlineData(41, 49, 50, 50, true)] // 24.4x and 20.4x both count as 25x
    [InlineData(49, 41, 50, 80, false)] // their fields do not
    [InlineData(4.6, 4.9, 50, 50, true)] // 217x and 204x both count as 200x
    public void Powers_are_compared_cut_to_the_range_but_fields_as_they_are(
        double first, double second, double firstFieldDeg, double secondFieldDeg, bool overlap) =>
        AssertOverlap(overlap, Owned(Some.Eyepiece(first, firstFieldDeg)), Alone(Some.Eyepiece(second, secondFieldDeg)));

    [Theory]
    [InlineData(10, 50, true)]
    [InlineData(10, 100, true)] // whatever its field
    [InlineData(11.4, 50, true)]
    [InlineData(11.5, 50, false)] // exactly 1.15
    public void A_barlow_that_makes_a_power_again_repeats_an_eyepiece(double focalLengthMm, double apparentFieldDeg, bool overlap) =>
        AssertOverlap(overlap, Alone(Some.Eyepiece(focalLengthMm, apparentFieldDeg)), Through(Some.Eyepiece(20), Some.Barlow(2)));

    [Fact]
    public void One_eyepiece_through_two_barlows_repeats_itself()
    {
        var eyepiece = Some.Eyepiece(20);
        AssertOverlap(true, Through(eyepiece, Some.Barlow(2, "one")), Through(eyepiece, Some.Barlow(2.1, "another")));
        AssertOverlap(false, Through(eyepiece, Some.Barlow(2, "one")), Through(eyepiece, Some.Barlow(3, "another")));
    }

    [Fact]
    public void Two_eyepieces_through_barlows_do_not_repeat_one_another()
    {
        AssertOverlap(false, Through(Some.Eyepiece(20), Some.Barlow(2, "one")), Through(Some.Eyepiece(30), Some.Barlow(3, "another")));
        var barlow = Some.Barlow(2);
        AssertOverlap(false, Through(Some.Eyepiece(20), barlow), Through(Some.Eyepiece(21), barlow));
    }

    [Fact]
    public void One_eyepiece_through_one_barlow_at_two_factors_does_not_repeat_itself()
    {
        var (eyepiece, barlow) = (Some.Eyepiece(20), Some.BarlowOf([2, 2.1]));
        AssertOverlap(false, Through(eyepiece, barlow, 2), Through(eyepiece, barlow, 2.1));
    }

    [Theory]
    [InlineData(7, 15, 12, 24, true)]
    [InlineData(8, 20, 10, 15, true)] // one within the other
    [InlineData(7, 12, 12, 24, false)] // a point is no stretch
    [InlineData(6, 8, 12, 24, false)]
    [InlineData(41, 45, 46, 49, false)] // both reach only the low end itself
    public void Two_zooms_repeat_one_another_where_they_share_a_stretch(
        double shortest, double longest, double otherShortest, double otherLongest, bool overlap) => AssertOverlap(
            overlap, Alone(Some.Zoom(shortest, longest)), Alone(Some.Zoom(otherShortest, otherLongest, id: "other")));

    [Fact]
    public void A_zoom_does_not_repeat_itself_through_a_barlow_but_another_does()
    {
        var (zoom, barlow) = (Some.Zoom(8, 24), Some.Barlow(2));
        var other = Some.Zoom(8, 24, id: "other");
        AssertOverlap(false, Alone(zoom), Through(zoom, barlow));
        AssertOverlap(true, Alone(zoom), Through(other, barlow));
        AssertOverlap(false, Through(zoom, barlow), Through(other, barlow));
        AssertOverlap(false, Through(zoom, barlow), Through(zoom, Some.Barlow(2, "another")));
    }

    [Fact]
    public void An_eyepiece_and_a_zoom_never_repeat_one_another()
    {
        AssertOverlap(false, Alone(Some.Eyepiece(12)), Alone(Some.Zoom(8, 24)));
        AssertOverlap(false, Through(Some.Eyepiece(24), Some.Barlow(2)), Alone(Some.Zoom(8, 24)));
    }

    [Fact]
    public void Only_pairs_with_a_purchase_in_them_are_held_against_it()
    {
        var problem = Some.Problem(From25To200, owned: [Some.Eyepiece(20, id: "a"), Some.Eyepiece(21, id: "b"), Some.Eyepiece(10)]);
        var bare = Kit.Of(problem, []);
        Assert.Single(bare.Ladders[0].Overlaps());
        Assert.Equal(0, bare.OverlapsThroughPurchases());

        // The doubler repeats the 10 mm with both the 20 and the 21 mm.
        var kit = Kit.Of(problem, [Some.Barlow(2)]);
        Assert.Equal(3, kit.Ladders[0].Overlaps().Count());
        Assert.Equal(2, kit.OverlapsThroughPurchases());
    }

    private static void AssertOverlap(bool expected, KitView a, KitView b)
    {
        Assert.Equal(expected, Overlap.Between(a.Showing, b.Showing, Step.Of(LeastStep)));
        Assert.Equal(expected, Overlap.Between(b.Showing, a.Showing, Step.Of(LeastStep)));
    }

    private static KitView Alone(Item eyepiece) => Usable(eyepiece, null, View.Of(From25To200, eyepiece.Ocular!));

    private static KitView Owned(Item eyepiece) => Usable(eyepiece, null, View.Of(From25To200, eyepiece.Ocular!), eyepieceIsBought: false);

    private static KitView Through(Item eyepiece, Item barlow, double? factor = null)
    {
        var optic = (Barlow)barlow.Optic;
        return Usable(eyepiece, barlow, View.Of(From25To200, eyepiece.Ocular!, optic, factor ?? optic.Factors[0]));
    }

    private static KitView Usable(Item eyepiece, Item? barlow, View? view, bool eyepieceIsBought = true)
    {
        Assert.NotNull(view);
        Assert.Null(view.Value.NotUsableBecause(new Observer(), null, bought: true));
        return new KitView(Some.Problem(From25To200), eyepiece, eyepieceIsBought, barlow, barlowIsBought: true, view.Value);
    }
}
