using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class CandidacyTests
{
    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Theory]
    [InlineData(Excluded.ByRequest)]
    [InlineData(Excluded.OutOfStock)]
    [InlineData(Excluded.Reticle)]
    [InlineData(Excluded.OverBudget)]
    [InlineData(Excluded.TooHeavy)]
    [InlineData(Excluded.BarrelTooWide)]
    [InlineData(Excluded.OutsidePowerRange)]
    [InlineData(Excluded.EyeReliefTooShort)]
    [InlineData(Excluded.ApparentFieldTooNarrow)]
    [InlineData(Excluded.OverlapsOwned)]
    public void The_first_reason_is_given_whatever_comes_after_it(Excluded first) =>
        Assert.Equal(first, ReasonAgainst(StrictProblem(first == Excluded.ByRequest), WithFlawsFrom(first)));

    [Fact]
    public void An_item_without_a_flaw_is_a_candidate() =>
        Assert.Null(ReasonAgainst(StrictProblem(false), Some.Eyepiece(10, id: "item")));

    [Theory]
    [InlineData(false, Excluded.ByRequest)]
    [InlineData(true, null)]
    public void A_kind_avoided_is_excluded_unless_the_very_item_is_demanded(bool demanded, Excluded? expected)
    {
        var problem = Some.Problem(From25To200, owned: [Some.Eyepiece(20)]) with
        {
            Preferences = new Preferences { AvoidBarlows = true, AvoidZooms = true },
            Demands = new Demands { MustInclude = demanded ? ["barlow-3", "zoom-8-24"] : [] },
        };
        Assert.Equal(expected, ReasonAgainst(problem, Some.Barlow(3)));
        Assert.Equal(expected, ReasonAgainst(problem, Some.Zoom(8, 24)));
        Assert.Null(ReasonAgainst(problem, Some.Eyepiece(10)));
    }

    [Fact]
    public void What_the_request_excludes_by_name_stays_excluded_even_if_demanded()
    {
        var problem = Some.Problem(From25To200) with
        {
            Preferences = new Preferences { Exclude = ["eyepiece-10"] },
            Demands = new Demands { MustInclude = ["eyepiece-10"] },
        };
        Assert.Equal(Excluded.ByRequest, ReasonAgainst(problem, Some.Eyepiece(10)));
    }

    [Theory]
    [InlineData(100, null, null)] // exactly the budget
    [InlineData(99.99, null, Excluded.OverBudget)]
    [InlineData(1000, 100.0, null)]
    [InlineData(1000, 99.0, Excluded.OverBudget)]
    public void A_price_may_reach_the_budget_and_the_limit_of_one_item(double budget, double? perItem, Excluded? expected)
    {
        var problem = Some.Problem(From25To200) with
        {
            Limits = new Limits { Budget = (decimal)budget, MaxPricePerItem = (decimal?)perItem },
        };
        Assert.Equal(expected, ReasonAgainst(problem, Some.Eyepiece(10, price: 100)));
    }

    [Theory]
    [InlineData(300.0, null)]
    [InlineData(301.0, Excluded.TooHeavy)]
    [InlineData(null, null)]
    public void An_unknown_mass_is_never_too_heavy(double? massGrams, Excluded? expected)
    {
        var problem = Some.Problem(From25To200) with { Limits = new Limits { Budget = 1000, MaxItemMassGrams = 300 } };
        var item = new Item("item", new Eyepiece(10, 50, 16, Barrel.Inch125)) { MassGrams = massGrams };
        Assert.Equal(expected, ReasonAgainst(problem, item));
    }

    [Fact]
    public void One_telescope_in_which_it_serves_is_enough()
    {
        var wide = Some.InUse(Some.Telescope(150, 750, Barrel.Inch2), 25, 200);
        var problem = Some.Problem() with { Telescopes = [From25To200, wide] };
        Assert.Null(ReasonAgainst(problem, Some.Eyepiece(30, barrel: Barrel.Inch2)));
    }

    [Fact]
    public void The_reason_is_that_of_the_view_that_comes_farthest()
    {
        // 12.5x is below the range of one telescope; 25x is within that of the other, but the eye relief is short.
        var longer = Some.InUse(Some.Telescope(focalLengthMm: 2000), 25, 200);
        var item = Some.Eyepiece(80, eyeReliefMm: 2);
        Assert.Equal(Excluded.EyeReliefTooShort, ReasonAgainst(Some.Problem() with { Telescopes = [From25To200, longer] }, item));
        Assert.Equal(Excluded.EyeReliefTooShort, ReasonAgainst(Some.Problem() with { Telescopes = [longer, From25To200] }, item));
    }

    [Theory]
    [InlineData(0, Excluded.OverlapsOwned)]
    [InlineData(1, null)]
    public void As_many_overlaps_as_allowed_are_let_through(int allowed, Excluded? expected)
    {
        var problem = Some.Problem(From25To200, owned: [Some.Eyepiece(20)]) with
        {
            Limits = new Limits { Budget = 1000, AllowedOverlaps = allowed },
        };
        Assert.Equal(expected, ReasonAgainst(problem, Some.Eyepiece(21)));
    }

    [Fact]
    public void An_eyepiece_that_repeats_an_owned_power_only_through_an_owned_barlow_overlaps_too()
    {
        var problem = Some.Problem(From25To200, owned: [Some.Barlow(2), Some.Eyepiece(10)]);
        Assert.Equal(Excluded.OverlapsOwned, ReasonAgainst(problem, Some.Eyepiece(20)));
        Assert.Equal(Excluded.OverlapsOwned, ReasonAgainst(problem, Some.Eyepiece(5)));
        Assert.Null(ReasonAgainst(problem, Some.Eyepiece(30)));
    }

    [Fact]
    public void An_eyepiece_that_two_owned_barlows_show_alike_repeats_itself()
    {
        var problem = Some.Problem(From25To200, owned: [Some.Barlow(2), Some.Barlow(2.1)]);
        Assert.Equal(Excluded.OverlapsOwned, ReasonAgainst(problem, Some.Eyepiece(20)));
    }

    [Fact]
    public void A_second_barlow_of_the_same_factor_repeats_the_first()
    {
        var problem = Some.Problem(From25To200, owned: [Some.Barlow(2), Some.Eyepiece(20)]);
        Assert.Equal(Excluded.OverlapsOwned, ReasonAgainst(problem, Some.Barlow(2, "another")));
        Assert.Null(ReasonAgainst(problem, Some.Barlow(3)));
    }

    [Fact]
    public void What_is_owned_already_is_no_candidate()
    {
        var item = Some.Barlow(2);
        Assert.Equal(Excluded.OverlapsOwned, ReasonAgainst(Some.Problem(From25To200, owned: [item]), item));
    }

    private static Excluded? ReasonAgainst(PurchaseProblem problem, Item item) =>
        Candidacy.Of(problem with { Catalogue = [item] }).ExclusionOf(item)?.Reason;

    private static PurchaseProblem StrictProblem(bool excludesItem) => Some.Problem(From25To200, owned: [Some.Eyepiece(20)]) with
    {
        Limits = new Limits { Budget = 500, MaxItemMassGrams = 1000 },
        Preferences = new Preferences { LeastApparentFieldDeg = 50, Exclude = excludesItem ? ["item"] : [] },
    };

    /// <summary>An item with that flaw and with all later ones that it can have beside it.</summary>
    private static Item WithFlawsFrom(Excluded first)
    {
        var focalLengthMm = first <= Excluded.OutsidePowerRange ? 100 : 20;
        var apparentFieldDeg = first <= Excluded.ApparentFieldTooNarrow ? 45 : 50;
        var eyeReliefMm = first <= Excluded.EyeReliefTooShort ? 3 : 16;
        var barrel = first <= Excluded.BarrelTooWide ? Barrel.Inch2 : Barrel.Inch125;
        var purpose = first <= Excluded.Reticle ? EyepiecePurpose.Reticle : EyepiecePurpose.Observing;
        return new Item("item", new Eyepiece(focalLengthMm, apparentFieldDeg, eyeReliefMm, barrel) { Purpose = purpose })
        {
            Price = first <= Excluded.OverBudget ? 1000 : 100,
            MassGrams = first <= Excluded.TooHeavy ? 1500 : 200,
            InStock = first > Excluded.OutOfStock,
        };
    }
}
