using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>One telescope of 1000 mm; 25 mm give 40 times, 10 mm give 100.</summary>
public sealed class PlanNotesTests
{
    private const decimal Budget = 300;

    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Theory]
    [InlineData(180, null)]
    [InlineData(200, null)]
    [InlineData(201, PlanNotes.BeyondBudget)]
    public void A_much_wider_view_is_offered_and_whether_the_money_is_there(int price, string? variant)
    {
        var note = Single(PlanNotes.WiderViewCosts, [Some.Eyepiece(20)], [Some.Eyepiece(30, 70, id: "wide", price: price)]);

        Assert.Equal(("wide", variant, 200m), (ValueOf(note, "itemId"), note.Variant, ValueOf(note, "moneyLeft")));
        Assert.Equal((1.0, 2.1), ((double)ValueOf(note, "trueFieldDeg")!, Math.Round((double)ValueOf(note, "widerFieldDeg")!, 9)));
    }

    [Theory]
    [InlineData(50.0, 16, true)] // 1.25 degrees instead of 1
    [InlineData(49.9, 16, false)]
    [InlineData(80.0, 9, false)] // tight, as nothing bought is
    public void It_must_be_much_wider_and_have_no_drawback_that_the_plan_has_not(double fieldDeg, double eyeReliefMm, bool isOffered)
    {
        var wide = Some.Eyepiece(25, fieldDeg, eyeReliefMm, id: "wide");

        Assert.Equal(isOffered, IsOfferedBeside(Some.Eyepiece(10)));
        Assert.Equal(fieldDeg >= 50, IsOfferedBeside(Some.Eyepiece(10, eyeReliefMm: 6)));

        bool IsOfferedBeside(Item bought) => CodesOf([bought, Some.Eyepiece(5)], [wide], owned: [Some.Eyepiece(20)]).Contains(PlanNotes.WiderViewCosts);
    }

    [Fact]
    public void A_figure_that_was_assumed_of_what_is_offered_is_told()
    {
        var wide = new Item("wide", Eyepiece.Of(32, null, null, 29, Barrel.Inch125)) { Price = 50 };

        var note = Single(PlanNotes.WiderViewCosts, [Some.Eyepiece(10)], [wide]);

        Assert.True(ValueOf(note, WiderView.AssumedField) is double and > 0);
        Assert.True(ValueOf(note, WiderView.AssumedEyeRelief) is double and > 0);
    }

    [Theory]
    [InlineData(9, false)]
    [InlineData(16, true)]
    public void A_drawback_that_an_owned_eyepiece_has_through_a_bought_Barlow_is_none_of_a_purchase(double eyeReliefMm, bool isOffered)
    {
        Item[] bought = [Some.Barlow(2), Some.Eyepiece(5)];

        var codes = CodesOf([.. bought], [Some.Eyepiece(32, 70, eyeReliefMm, id: "wide")], owned: [Some.Eyepiece(20, eyeReliefMm: 6)]);

        Assert.Equal(isOffered, codes.Contains(PlanNotes.WiderViewCosts));
    }

    [Theory]
    [InlineData("a", null)]
    [InlineData("b", PlanNotes.NoneParfocal)]
    public void Whoever_prefers_parfocal_eyepieces_is_told_which_are(string otherGroup, string? variant)
    {
        Item[] bought = [InGroup(Some.Eyepiece(20), "a"), InGroup(Some.Eyepiece(10), otherGroup)];
        var problem = Problem([.. bought], []) with { Preferences = new Preferences { Prefer = Prefer.Parfocal } };

        var note = PlanNotes.Of(problem, PlanOf(problem, [.. bought])).Single(one => one.Code == PlanNotes.Parfocal);

        Assert.Equal(variant, note.Variant);
    }

    [Fact]
    public void The_cheapest_of_several_is_offered()
    {
        ImmutableArray<Item> wide =
            [Some.Eyepiece(30, 70, id: "b", price: 90), Some.Eyepiece(30, 72, id: "a", price: 90), Some.Eyepiece(30, 76, id: "c", price: 95)];

        var note = Single(PlanNotes.WiderViewCosts, [Some.Eyepiece(20)], wide);

        Assert.Equal("a", ValueOf(note, "itemId"));
    }

    [Fact]
    public void A_zoom_is_offered_in_place_of_an_eyepiece_and_a_Barlow()
    {
        var zoom = Some.Zoom(4, 20, fieldAtLongestDeg: 50, id: "zoom", price: 210);
        var note = Single(PlanNotes.ZoomInstead, [Some.Eyepiece(10, id: "ten"), Some.Barlow(2)], [zoom]);

        Assert.Equal(["barlow-2", "ten"], ((string[])ValueOf(note, "itemIds")!).Order(StringComparer.Ordinal));
        Assert.Equal((200m, 300m, null), (ValueOf(note, "pricesTogether"), ValueOf(note, "moneyLeft"), note.Variant));
    }

    [Theory]
    [InlineData(6, 20, 50, 16)] // 200 times are out of its reach
    [InlineData(4, 20, 49, 16)] // a narrow field, as nothing bought has
    [InlineData(4, 20, 50, 9)] // tight
    public void No_zoom_is_offered_that_does_less(double shortestMm, double longestMm, double fieldDeg, double eyeReliefMm) => Assert.DoesNotContain(
        PlanNotes.ZoomInstead, CodesOf([Some.Eyepiece(10), Some.Barlow(2)], [Some.Zoom(shortestMm, longestMm, 60, fieldDeg, eyeReliefMm)]));

    [Fact]
    public void A_zoom_that_the_money_does_not_suffice_for_is_offered_as_such()
    {
        var zoom = Some.Zoom(8, 20, fieldAtLongestDeg: 50, price: 250);

        var note = Single(PlanNotes.ZoomInstead, [Some.Eyepiece(10), Some.Eyepiece(14), Some.Eyepiece(30, 70)], [zoom]);

        Assert.Equal((PlanNotes.BeyondBudget, 200m), (note.Variant, ValueOf(note, "moneyLeft")));
    }

    [Fact]
    public void Where_no_budget_was_named_no_money_is_spoken_of()
    {
        var problem = Problem([Some.Eyepiece(20), Some.Eyepiece(30, 70)], []) with { Limits = new Limits { Budget = (decimal)Bounds.Budget.Most } };

        var note = PlanNotes.Of(problem, PlanOf(problem, problem.Catalogue[0])).Single(one => one.Code == PlanNotes.WiderViewCosts);

        Assert.Equal((PlanNotes.NoBudget, null), (note.Variant, ValueOf(note, "moneyLeft")));
    }

    [Fact]
    public void Where_zooms_are_not_avoided_the_plan_has_weighed_them() => Assert.DoesNotContain(
        PlanNotes.ZoomInstead,
        CodesOf([Some.Eyepiece(10), Some.Barlow(2)], [Some.Zoom(4, 20, fieldAtLongestDeg: 50)], preferences: new Preferences { AvoidZooms = false }));

    [Fact]
    public void A_telescope_that_nothing_serves_is_named()
    {
        var narrow = Some.InUse(Some.Telescope(focuser: Barrel.Inch0965, name: "narrow"), lowest: 25, highest: 200);
        var problem = Some.Problem(owned: [Some.Eyepiece(20)]) with { Telescopes = [From25To200, narrow] };

        var note = PlanNotes.Of(problem, PlanOf(problem)).Single(one => one.Code == PlanNotes.TelescopeNotServed);

        Assert.Equal("narrow", ValueOf(note, "telescope"));
    }

    [Fact]
    public void Where_there_is_nothing_to_look_through_the_cheapest_that_would_help_is_named()
    {
        ImmutableArray<Item> forSale =
        [
            Some.Eyepiece(20, id: "dear", price: 900),
            Some.Eyepiece(10, id: "cheap", price: 400),
            Some.Eyepiece(2, id: "no-use", price: 310),
            Some.Barlow(2, price: 305),
        ];
        var note = Single(PlanNotes.NothingToLookThrough, [], forSale);

        Assert.Equal(("cheap", 400m, null), (ValueOf(note, "itemId"), ValueOf(note, "price"), note.Variant));
        Assert.DoesNotContain(PlanNotes.NothingToLookThrough, CodesOf([], forSale, owned: [Some.Eyepiece(15)]));
    }

    [Fact]
    public void A_Barlow_may_be_what_helps()
    {
        var note = Single(PlanNotes.NothingToLookThrough, [], [Some.Barlow(2, price: 320), Some.Eyepiece(10, price: 400)], owned: [Some.Eyepiece(55)]);

        Assert.Equal("barlow-2", ValueOf(note, "itemId"));
    }

    [Fact]
    public void Where_nothing_for_sale_would_help_that_is_said()
    {
        var note = Single(PlanNotes.NothingToLookThrough, [], [Some.Eyepiece(2)]);

        Assert.Equal((null, PlanNotes.NothingForSale), (ValueOf(note, "itemId"), note.Variant));
    }

    [Fact]
    public void Where_the_budget_buys_nothing_what_a_larger_one_would_bring_is_told()
    {
        ImmutableArray<Item> forSale =
            [Some.Eyepiece(21, id: "little", price: 310), Some.Eyepiece(6, id: "much", price: 350), Some.Eyepiece(5, id: "dear", price: 400)];
        var note = Single(PlanNotes.LargerBudget, [], forSale, owned: [Some.Eyepiece(20)]);

        Assert.Equal(("much", 350m), (ValueOf(note, "itemId"), ValueOf(note, "price")));
        Assert.True((double)ValueOf(note, "servedWithIt")! - (double)ValueOf(note, "servedPercent")! > LargerBudget.ClearlyMore);
        Assert.DoesNotContain(PlanNotes.LargerBudget, CodesOf([Some.Eyepiece(10)], forSale, owned: [Some.Eyepiece(20)]));
    }

    [Fact]
    public void A_wish_that_is_not_granted_names_the_cheapest_that_would_grant_it()
    {
        ImmutableArray<Item> forSale =
            [Some.Eyepiece(30, 70, id: "wide", price: 80), Some.Eyepiece(30, 72, id: "wider", price: 90), Some.Eyepiece(10, id: "narrow")];
        var problem = Problem(forSale, []) with { Observer = new Observer { Observes = [Interest.LargeNebulae] } };
        var plan = PlanOf(problem) with { Wish = new WideViewWish(2, Granted: false) };

        var note = PlanNotes.Of(problem, plan).Single(one => one.Code == PlanNotes.WideViewNotGranted);

        Assert.Equal(("wide", 2.0, 3), (ValueOf(note, "itemId"), ValueOf(note, "trueFieldDeg"), ValueOf(note, "maxPurchases")));
        var granted = PlanNotes.Of(problem, plan with { Wish = new WideViewWish(2, Granted: true) });
        Assert.DoesNotContain(PlanNotes.WideViewNotGranted, granted.Select(one => one.Code));
    }

    [Fact]
    public void Purchases_of_another_parfocal_group_than_all_that_is_owned_are_named()
    {
        Item[] bought = [InGroup(Some.Eyepiece(10, id: "other"), "b"), InGroup(Some.Eyepiece(8, id: "same"), "a"), Some.Eyepiece(6)];
        var note = Single(PlanNotes.NotParfocal, [.. bought], [], owned: [InGroup(Some.Eyepiece(20, id: "own"), "a"), Some.Eyepiece(15)]);

        Assert.Equal(["other"], (string[])ValueOf(note, "itemIds")!);
        Assert.DoesNotContain(PlanNotes.NotParfocal, CodesOf([.. bought], [], owned: [Some.Eyepiece(20)]));
    }

    [Fact]
    public void Of_what_is_not_allowed_nothing_is_said()
    {
        var problem = Problem([Some.Eyepiece(10)], []);

        Assert.Empty(PlanNotes.Of(problem, PlanOf(problem) with { Outcome = Outcome.Infeasible }));
    }

    private static Item InGroup(Item item, string group) => new(item.Id, item.Optic) { Price = item.Price, ParfocalGroup = group };

    private static PurchaseProblem Problem(ImmutableArray<Item> forSale, ImmutableArray<Item> owned) =>
        Some.Problem(From25To200, owned: owned, catalogue: Assortment.Of(forSale.AsSpan())) with { Limits = new Limits { Budget = Budget } };

    private static Plan PlanOf(PurchaseProblem problem, params ImmutableArray<Item> purchases) =>
        new() { Outcome = Outcome.Optimal, Purchases = purchases, Candidacy = Candidacy.Of(problem) };

    private static ImmutableArray<Remark> NotesOf(
        ImmutableArray<Item> bought, ImmutableArray<Item> others, ImmutableArray<Item> owned, Preferences? preferences)
    {
        var problem = Problem([.. bought, .. others], owned) with { Preferences = preferences ?? new Preferences() };
        return PlanNotes.Of(problem, PlanOf(problem, bought));
    }

    private static Remark Single(string code, ImmutableArray<Item> bought, ImmutableArray<Item> others, ImmutableArray<Item> owned = default) =>
        NotesOf(bought, others, owned.IsDefault ? [] : owned, null).Single(note => note.Code == code);

    private static IEnumerable<string> CodesOf(
        ImmutableArray<Item> bought, ImmutableArray<Item> others, ImmutableArray<Item> owned = default, Preferences? preferences = null) =>
        NotesOf(bought, others, owned.IsDefault ? [] : owned, preferences).Select(note => note.Code);

    private static object? ValueOf(Remark remark, string name) => remark.Values.Single(value => value.Name == name).Value;
}
