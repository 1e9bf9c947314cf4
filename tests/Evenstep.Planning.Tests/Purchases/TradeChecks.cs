using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;

namespace Evenstep.Planning.Tests.Purchases;

/// <summary>What anyone who sells eyepieces would say: common practice of the trade, no source.</summary>
[Trait("Basis", "Common practice, no source")]
public sealed class TradeChecks
{
    private const double WorkLimit = 20;

    /// <summary>A dark-adapted pupil of 6 mm and a two-inch focuser: from 25 to 200 times.</summary>
    private static readonly TelescopeInUse TwoInch = Some.InUse(Some.Telescope(150, 750, Barrel.Inch2));

    [Fact]
    public void A_telescope_of_910_mm_with_26_and_13_mm_gives_35_and_70_times_and_a_barlow_adds_87_5_and_175()
    {
        var telescope = Some.InUse(Some.Telescope(130, 910));
        var problem = Some.Problem(telescope, owned: [Some.Eyepiece(26), Some.Eyepiece(13)]);

        AssertPowers([35, 70], Kit.Of(problem, []));
        AssertPowers([35, 70, 87.5, 175], Kit.Of(problem, [Some.Barlow(2.5)]));
    }

    [Fact]
    public void A_doubler_is_refused_to_the_owner_of_a_24_and_a_12() => AssertRefused(
        Excluded.OverlapsOwned, Some.Barlow(2), Some.Problem(owned: [Some.Eyepiece(24), Some.Eyepiece(12)]));

    [Fact]
    public void A_doubler_is_offered_to_the_owner_of_a_24_and_a_17() => AssertOffered(
        Some.Barlow(2), Some.Problem(owned: [Some.Eyepiece(24), Some.Eyepiece(17)]));

    [Fact]
    public void The_owner_of_a_32_mm_of_50_degrees_may_still_buy_a_two_inch_30_mm_of_70() => AssertOffered(
        Some.Eyepiece(30, 70, barrel: Barrel.Inch2), Some.Problem(TwoInch, owned: [Some.Eyepiece(32, 50)]));

    [Fact]
    public void But_not_another_30_mm_of_50_degrees() => AssertRefused(
        Excluded.OverlapsOwned, Some.Eyepiece(30, 50), Some.Problem(TwoInch, owned: [Some.Eyepiece(32, 50)]));

    [Fact]
    public void A_two_inch_eyepiece_is_refused_to_a_smaller_focuser() =>
        AssertRefused(Excluded.BarrelTooWide, Some.Eyepiece(30, 70, barrel: Barrel.Inch2), Some.Problem());

    [Fact]
    public void A_two_inch_eyepiece_alone_is_offered_to_a_two_inch_focuser() =>
        AssertOffered(Some.Eyepiece(30, 70, barrel: Barrel.Inch2), Some.Problem(TwoInch));

    [Theory]
    [InlineData(5)]
    [InlineData(14.9)]
    public void A_spectacle_wearer_is_not_offered_short_eye_relief(double eyeReliefMm) => AssertRefused(
        Excluded.EyeReliefTooShort,
        Some.Eyepiece(10, eyeReliefMm: eyeReliefMm),
        Some.Problem(observer: new Observer { WearsSpectacles = true }));

    [Fact]
    public void Nobody_is_sold_an_eyepiece_for_which_the_lashes_touch_the_glass() =>
        AssertRefused(Excluded.EyeReliefTooShort, Some.Eyepiece(10, eyeReliefMm: 4.9), Some.Problem());

    [Fact]
    public void Of_two_with_the_same_power_a_demand_to_frame_takes_the_wide_one()
    {
        var narrow = Some.Eyepiece(30, 50, id: "narrow", price: 40);
        var wide = Some.Eyepiece(30, 75, barrel: Barrel.Inch2, id: "wide", price: 200);
        var problem = Some.Problem(TwoInch, owned: [Some.Eyepiece(8)], catalogue: [narrow, wide]);

        AssertPlan(Outcome.Optimal, [narrow], problem);
        AssertPlan(Outcome.Optimal, [wide], problem with { Demands = new Demands { MustFrame = [new FramingDemand("a nebula", 2.4)] } });
    }

    [Fact]
    public void An_owner_whose_steps_are_all_enough_is_told_to_keep_the_money()
    {
        Item[] owned =
        [
            Some.Eyepiece(30), Some.Eyepiece(20), Some.Eyepiece(14), Some.Eyepiece(10), Some.Eyepiece(7.5),
        ];
        Item[] forSale = [Some.Eyepiece(24.5, 82, price: 1), Some.Eyepiece(12, 82, price: 1), Some.Eyepiece(17, 82, price: 1)];
        var problem = Some.Problem(owned: [.. owned], catalogue: [.. forSale]);

        Assert.Equal(forSale.Length, Candidacy.Of(problem).Candidates.Length);
        AssertPlan(Outcome.NothingWorthwhile, [], problem);
    }

    [Fact]
    public void A_hole_between_two_eyepieces_is_filled_in_its_middle()
    {
        var middle = Some.Eyepiece(12, id: "middle", price: 100);
        var problem = Some.Problem(
            owned: [Some.Eyepiece(30), Some.Eyepiece(20), Some.Eyepiece(7.5)],
            catalogue: [middle, Some.Eyepiece(17, id: "near-one", price: 90), Some.Eyepiece(9, id: "near-other", price: 90)]) with
        {
            Limits = new Limits { Budget = 100 },
        };
        AssertPlan(Outcome.Optimal, [middle], problem);
    }

    private static void AssertPowers(double[] expected, Kit kit) =>
        Assert.Equal(expected, kit.Ladders[0].Usable.Select(view => Math.Round(view.View.Power, 9)));

    private static void AssertOffered(Item item, PurchaseProblem problem) =>
        Assert.Equal(item, Assert.Single(Candidacy.Of(problem with { Catalogue = [item] }).Candidates));

    private static void AssertRefused(Excluded reason, Item item, PurchaseProblem problem) =>
        Assert.Equal(new Exclusion(item, reason), Assert.Single(Candidacy.Of(problem with { Catalogue = [item] }).Exclusions));

    private static void AssertPlan(Outcome outcome, Item[] purchases, PurchaseProblem problem)
    {
        var plan = Planner.Solve(problem, new WorkBudget(WorkLimit));
        Assert.Equal(outcome, plan.Outcome);
        Assert.Equal(purchases.Select(item => item.Id), plan.Purchases.Select(item => item.Id));
        Assert.Empty(Referee.FaultsOf(problem, plan));
    }
}
