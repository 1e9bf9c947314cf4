using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

public sealed class ReasonsTests
{
    private const int Draws = 400;
    private const double Little = 1e-6;

    private static readonly TelescopeInUse From50To200 = Some.InUse(lowest: 50, highest: 200);

    [Fact]
    public void Every_reason_is_true_of_the_kit()
    {
        var said = new Dictionary<string, int>();
        for (var seed = 0; seed < Draws; seed++)
        {
            var drawn = KitDraw.Make(seed, owned: 3, bought: 3);
            var kit = Kit.Of(drawn.Problem with { Demands = drawn.Problem.Demands with { MustInclude = ["item-0"] } }, drawn.Purchases);
            foreach (var item in kit.Purchases)
            {
                var reasons = Reasons.For(item, kit, kit.Without(item), PlanOf(kit, new WideViewWish(1.2, Granted: kit.WidestFieldDeg() >= 1.2)));
                Assert.NotEmpty(reasons);
                foreach (var reason in reasons)
                {
                    said[reason.Code] = said.GetValueOrDefault(reason.Code) + 1;
                    Assert.True(IsTrue(reason, item, kit), $"seed {seed}, {item}: {reason.Code}");
                }
            }
        }

        Assert.Empty(Reasons.Codes.Except(said.Keys));
    }

    [Fact]
    public void A_view_that_hardly_makes_a_step_smaller_does_not_fill_it()
    {
        // 51 times beside 50 leave nearly all of the jump to 200.
        var item = Some.Eyepiece(1000 / 51.0, id: "hardly");
        ImmutableArray<Item> owned = [Some.Eyepiece(20), Some.Eyepiece(5)];

        Assert.Equal([Reasons.FillsStep], ReasonsFor(item, owned).Select(reason => reason.Code));
        Assert.Equal([Reasons.AskedFor], ReasonsFor(item, owned, mustInclude: item.Id).Select(reason => reason.Code));
    }

    [Fact]
    public void What_fills_a_step_only_through_another_item_names_that()
    {
        var alone = ReasonsFor(Some.Eyepiece(10), [Some.Eyepiece(20)]).Single();
        var through = ReasonsFor(Some.Eyepiece(10), [Some.Eyepiece(20), Some.Barlow(2)]).Single();
        var barlow = ReasonsFor(Some.Barlow(2), [Some.Eyepiece(20)]).Single(reason => reason.Code == Reasons.ReachesHighEnd);

        Assert.Equal((Reasons.ReachesHighEnd, null), (alone.Code, alone.Values.Single(value => value.Name == "withId").Value));
        Assert.Equal((200.0, "barlow-2"), (ValueOf(through, "power"), ValueOf(through, "withId")));
        Assert.Equal((100.0, "eyepiece-20"), (ValueOf(barlow, "power"), ValueOf(barlow, "withId")));
    }

    [Fact]
    public void A_Barlow_adds_a_stretch_of_a_zoom()
    {
        var reason = ReasonsFor(Some.Barlow(2), [Some.Zoom(10, 20), Some.Eyepiece(40)]).Single(one => one.Code == Reasons.BarlowAdds);

        Assert.Equal([100.0], (double[])ValueOf(reason, "powers"));
        Assert.Equal([200.0], (object?[])ValueOf(reason, "powersAtShortest"));
    }

    [Fact]
    public void What_only_makes_views_better_says_so()
    {
        Item[] bought = [Some.Eyepiece(10, eyeReliefMm: 6, id: "tight"), Some.Eyepiece(10, eyeReliefMm: 16, id: "easy")];
        var kit = Kit.Of(Some.Problem(From50To200), bought);

        var reason = Reasons.For(bought[1], kit, kit.Without(bought[1]), PlanOf(kit, wish: null)).Single();

        Assert.Equal((Reasons.BetterViews, null, 0.0), (reason.Code, reason.Variant, ValueOf(reason, "withoutPercent")));
    }

    [Theory]
    [InlineData(50, 50.0, null, null)] // of 20 mm alone 50, through 2x 100, through 3x 150
    [InlineData(51, 100.0, Reasons.Through, "barlow-2")]
    [InlineData(120, 150.0, Reasons.Through, "barlow-3")]
    public void A_reticle_eyepiece_names_the_plainest_way_that_will_do(double least, double power, string? variant, string? barlow)
    {
        var reason = ReasonsFor(Some.Reticle(20), [Some.Barlow(3), Some.Barlow(2)], least).Single(one => one.Code == Reasons.Reticle);

        Assert.Equal((power, variant, barlow), (ValueOf(reason, "power"), reason.Variant, reason.Values.Single(value => value.Name == "itemId").Value));
    }

    [Fact]
    public void A_zoom_covers_a_stretch_and_may_reach_an_end() =>
        Assert.Equal([Reasons.ZoomCovers, Reasons.ReachesHighEnd], ReasonsFor(Some.Zoom(5, 10), owned: [Some.Eyepiece(20)]).Select(reason => reason.Code));

    [Theory]
    [InlineData(5, 10, null)]
    [InlineData(3, 10, Filling.Past)]
    [InlineData(4.2, 4.7, Filling.Beyond)]
    public void A_zoom_may_end_at_an_end_or_reach_past_it_or_lie_beyond_it(double shortestMm, double longestMm, string? variant) => Assert.Equal(
        variant, ReasonsFor(Some.Zoom(shortestMm, longestMm), owned: [Some.Eyepiece(20)]).Single(reason => reason.Code == Reasons.ReachesHighEnd).Variant);

    [Theory]
    [InlineData(4.6, 21.0, Reasons.ReachesHighEnd, Filling.Beyond)]
    [InlineData(5.0, 21.0, Reasons.ReachesHighEnd, null)]
    [InlineData(6.0, 21.0, Reasons.ReachesHighEnd, null)]
    [InlineData(24.0, 5.0, Reasons.ReachesLowEnd, Filling.Beyond)]
    [InlineData(20.0, 5.0, Reasons.ReachesLowEnd, null)]
    [InlineData(15.0, null, Reasons.FillsStep, Reasons.First)]
    public void A_reason_tells_apart_what_comes_first_and_what_lies_a_little_beyond_the_range(
        double focalLengthMm, double? ownedMm, string code, string? variant)
    {
        var reason = ReasonsFor(Some.Eyepiece(focalLengthMm), ownedMm is { } mm ? [Some.Eyepiece(mm)] : []).Single();

        Assert.Equal((code, variant), (reason.Code, reason.Variant));
    }

    [Fact]
    public void A_zoom_whose_powers_all_lie_beyond_an_end_covers_them_and_not_a_point()
    {
        var reason = ReasonsFor(Some.Zoom(21, 24), [Some.Eyepiece(5)]).Single(one => one.Code == Reasons.ZoomCovers);

        Assert.Equal((1000 / 24.0, 1000 / 21.0), (ValueOf(reason, "from"), ValueOf(reason, "to")));
    }

    [Fact]
    public void A_Barlow_adds_no_power_that_is_there_already_or_beyond_the_range()
    {
        var reasons = ReasonsFor(Some.Barlow(2), owned: [Some.Zoom(8, 20, id: "zoom"), Some.Eyepiece(20, id: "a"), Some.Eyepiece(9.5, id: "b")]);

        var reason = reasons.Single(one => one.Code == Reasons.BarlowAdds);
        Assert.Equal([125.0], (double[])ValueOf(reason, "powers"));
        Assert.Equal([200.0], (object?[])ValueOf(reason, "powersAtShortest"));
        Assert.Equal(["zoom"], (string[])ValueOf(reason, "eyepieceIds"));
    }

    [Fact]
    public void A_barlow_names_the_eyepieces_of_which_it_makes_powers()
    {
        var reason = ReasonsFor(Some.Barlow(2), owned: [Some.Eyepiece(20, id: "a"), Some.Eyepiece(15, id: "b")]).Single(one => one.Code == Reasons.BarlowAdds);

        Assert.Equal([100.0, 1000 * 2 / 15.0], (double[])ValueOf(reason, "powers"));
        Assert.Equal(["a", "b"], (string[])ValueOf(reason, "eyepieceIds"));
    }

    [Fact]
    public void A_reticle_eyepiece_and_a_barlow_for_it_are_told_apart()
    {
        Assert.Contains(Reasons.Reticle, ReasonsFor(Some.Reticle(10), [], leastPower: 100).Select(reason => reason.Code));
        Assert.Contains(Reasons.ReticlePower, ReasonsFor(Some.Barlow(2), [Some.Reticle(20)], leastPower: 100).Select(reason => reason.Code));
    }

    [Fact]
    public void What_adds_nothing_is_said_not_to_be_proved_needed() =>
        Assert.Equal([Reasons.NotProvedNeeded], ReasonsFor(Some.Eyepiece(20, id: "again"), [Some.Eyepiece(20)]).Select(reason => reason.Code));

    private static ImmutableArray<Remark> ReasonsFor(Item item, ImmutableArray<Item> owned, double? leastPower = null, string? mustInclude = null)
    {
        var demands = new Demands { ReticleLeastPower = leastPower, MustInclude = mustInclude is null ? [] : [mustInclude] };
        var kit = Kit.Of(Some.Problem(From50To200, owned: owned) with { Demands = demands }, [item]);
        return Reasons.For(item, kit, kit.Without(item), plan: null);
    }

    private static Plan PlanOf(Kit kit, WideViewWish? wish) => new()
    {
        Outcome = Outcome.Optimal,
        Purchases = kit.Purchases,
        Candidacy = new Candidacy(kit.Purchases, []) { Telescopes = [.. Enumerable.Range(0, kit.Ladders.Length)] },
        Values = new StageValues(1, 1, 0, null, 0),
        Wish = wish,
    };

    private static object ValueOf(Remark remark, string name) => remark.Values.Single(value => value.Name == name).Value!;

    private static bool IsTrue(Remark reason, Item item, Kit kit)
    {
        var views = kit.Ladders.SelectMany(ladder => ladder.Usable).Where(view => IsIn(reason, view)).ToList();
        var added = views.Where(view => view.Needs(item)).ToList();
        return reason.Code switch
        {
            Reasons.FillsStep or Reasons.ReachesLowEnd or Reasons.ReachesHighEnd => Fills(reason, added, views.Except(added).ToList()),
            Reasons.ZoomCovers => added.Exists(view => view.Barlow is null && Covers(view.View, reason)),
            Reasons.BarlowAdds => AreNew((double[])ValueOf(reason, "powers"), added, views.Except(added)),
            Reasons.AskedFor => item.Id == "item-0",
            Reasons.Framing => kit.Problem.Demands.MustFrame.Any(frame => IsNeededFor(frame.WidthDeg, frame.TelescopeIndex, item, kit)),
            Reasons.GrantsWideView => IsNeededFor(1.2, null, item, kit),
            Reasons.Reticle or Reasons.ReticlePower => !(kit.Without(item).ReticlePower() >= kit.Problem.Demands.ReticleLeastPower)
                && (double)ValueOf(reason, "power") > kit.Problem.Demands.ReticleLeastPower - Little
                && (double)ValueOf(reason, "power") <= kit.ReticlePower() + Little,
            Reasons.BetterViews => reason.Variant is not null || kit.Figures.ComfortableShare > kit.Without(item).Figures.ComfortableShare + 0.0099,
            Reasons.NotProvedNeeded => added.TrueForAll(view => kit.Without(item).Figures.LargestStep <= kit.Figures.LargestStep * (1 + Little)),
            _ => false,
        };
    }

    private static bool IsNeededFor(double widthDeg, int? telescopeIndex, Item item, Kit kit) =>
        kit.WidestFieldDeg(telescopeIndex) >= widthDeg - Little && !(kit.Without(item).WidestFieldDeg(telescopeIndex) >= widthDeg);

    private static bool IsIn(Remark reason, KitView view) =>
        reason.Values.FirstOrDefault(value => value.Name == "telescope")?.Value is not string telescope || view.View.Telescope.Telescope.Name == telescope;

    /// <summary>Nothing else lies between the ends of the jump, and a view of the item does, by what it is said to be looked through.</summary>
    private static bool Fills(Remark reason, List<KitView> added, List<KitView> others)
    {
        var (from, to, power) = ((double)ValueOf(reason, "from"), (double)ValueOf(reason, "to"), (double)ValueOf(reason, "power"));
        var isFree = others.TrueForAll(view => Highest(view) <= from * (1 + Little) || Lowest(view) >= to * (1 - Little));
        var with = reason.Values.Single(value => value.Name == "withId").Value;
        var own = added.Where(view => view.View.Power <= power * (1 + Little) && view.View.PowerAtShortest >= power * (1 - Little)).ToList();
        var isAtItsEnd = reason.Code switch
        {
            Reasons.ReachesLowEnd => others.TrueForAll(view => Lowest(view) >= to * (1 - Little)),
            Reasons.ReachesHighEnd => others.TrueForAll(view => Highest(view) <= from * (1 + Little)),
            _ => true,
        };
        return isFree && isAtItsEnd && own.Exists(view => view.View.Telescope.Range.Cut(power) is var cut
            && cut >= from * (1 - Little) && cut <= to * (1 + Little)
            && (view.Barlow is null ? with is null : with is string id && (id == view.Barlow.Id || id == view.Eyepiece.Id)));
    }

    private static double Lowest(KitView view) => view.View.CutPower;

    private static double Highest(KitView view) => view.View.Telescope.Range.Cut(view.View.PowerAtShortest);

    /// <summary>Its powers of use; all that it has, where none of them lies within the range.</summary>
    private static bool Covers(View view, Remark reason)
    {
        var (from, to) = (view.Telescope.Range.Cut(view.Power), view.Telescope.Range.Cut(view.PowerAtShortest));
        return from < to
            ? IsNear(from, reason, "from") && IsNear(to, reason, "to")
            : IsNear(view.Power, reason, "from") && IsNear(view.PowerAtShortest, reason, "to");
    }

    /// <summary>Useful powers of such views, and none that others have.</summary>
    private static bool AreNew(double[] powers, List<KitView> added, IEnumerable<KitView> others) => powers.Length > 0
        && powers.All(power => added.Exists(view => Has(view, power)) && !others.Any(view => Lowest(view) < power && power < Highest(view)));

    private static bool Has(KitView view, double power) => Lowest(view) <= power * (1 + Little) && power <= Highest(view) * (1 + Little);

    private static bool IsNear(double power, Remark reason, string name) => Math.Abs(power / (double)ValueOf(reason, name) - 1) < Little;
}
