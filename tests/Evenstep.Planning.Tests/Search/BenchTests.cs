using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

public class BenchTests
{
    private const int Problems = 200;
    private const int SetsPerBench = 8;
    private const int MostPlaces = 4;

    private const double Rounding = 1e-12;

    [Fact]
    public void Overlaps_shown_and_alone_and_between_are_those_that_the_kit_counts()
    {
        var overlapping = 0;
        foreach (var (drawn, bench, places) in BenchesAndSets())
        {
            var shown = drawn.Problem.Limits.AllowedOverlaps - bench.OverlapsLeft;
            var between = places.SelectMany((a, i) => places[(i + 1)..].Select(b => bench.OverlapsWith(a, bench.OcularCount).With(b))).Sum();
            var count = shown + places.Sum(bench.OverlapsOf) + between;
            if (bench.OverlapsLeft < 0)
            {
                // Of what is not allowed anyway it only matters that it is not.
                Assert.True(drawn.KitOf(bench, []).OverlapsThroughPurchases() >= shown);
                continue;
            }

            Assert.Equal(drawn.KitOf(bench, places).OverlapsThroughPurchases(), count);
            overlapping += between > 0 ? 1 : 0;
        }

        Assert.True(overlapping > Problems, $"only {overlapping} sets overlap");
    }

    [Fact]
    public void Overlaps_counted_one_by_one_are_those_counted_at_once() => Assert.All(
        BenchesAndSets().Where(one => one.Places.Length > 1),
        one => Assert.Equal(
            one.Bench.OverlapsWith(one.Places[0], one.Bench.OcularCount).With(one.Places[1]),
            one.Bench.OverlapsBetween(one.Places[0], one.Places[1])));

    [Fact]
    public void Overlaps_between_two_are_the_same_the_other_way_round()
    {
        foreach (var (_, bench, places) in BenchesAndSets().Where(one => one.Places.Length > 1))
        {
            Assert.Equal(
                bench.OverlapsWith(places[0], bench.OcularCount).With(places[1]),
                bench.OverlapsWith(places[1], bench.OcularCount).With(places[0]));
        }
    }

    [Fact]
    public void What_is_shown_and_added_is_what_the_kit_shows()
    {
        foreach (var (drawn, bench, places) in BenchesAndSets())
        {
            var sights = bench.Shown.Concat(places.SelectMany(place => bench.SightsOf(place).ToArray())).ToArray();
            var kit = drawn.KitOf(bench, places);
            for (var t = 0; t < kit.Ladders.Length; t++)
            {
                Assert.Equal(
                    kit.Ladders[t].Usable.Select(view => (view.Reach.From, view.Reach.To, view.Showing.TrueFieldDeg, view.NeedsPurchase)).Order(),
                    sights.Where(sight => sight.Telescope == t)
                        .Select(sight => (sight.Reach.From, sight.Reach.To, sight.Shows.TrueFieldDeg, sight.NeedsPurchase)).Order());
            }
        }
    }

    [Fact]
    public void A_framing_is_open_until_the_kit_shows_it()
    {
        var closed = 0;
        foreach (var (drawn, bench, places) in BenchesAndSets().Where(one => one.Drawn.Problem.Demands.MustFrame.Length > 0))
        {
            var open = places.Aggregate(bench.OpenFramings, (left, place) => left & ~bench.FramingsMet(place));
            Assert.Equal(FramingsOpenIn(drawn.KitOf(bench, places)), open);
            Assert.All(places, place => Assert.Equal(0u, bench.FramingsMet(place) & ~bench.OpenFramings));
            closed += open < bench.OpenFramings ? 1 : 0;
        }

        Assert.True(closed > Problems / 10, $"only {closed} sets meet a framing");
    }

    [Fact]
    public void The_wish_for_a_wide_view_is_one_framing_more()
    {
        foreach (var drawn in Drawn.Problems(Problems))
        {
            if (WideViewWish.TrueFieldWished(drawn.Problem, drawn.Ground.Candidacy.Candidates) is not { } wished)
            {
                continue;
            }

            var wishing = drawn.Ground.Wishing(wished);
            var wish = 1u << drawn.Problem.Demands.MustFrame.Length;
            Assert.Equal(drawn.Ground.Framings.Length + 1, wishing.Framings.Length);
            foreach (var bench in BarlowSet.All(wishing).Select(set => new Bench(wishing, set)))
            {
                Assert.Equal(!FramingRule.Frames(drawn.KitOf(bench, []), wished, null), (bench.OpenFramings & wish) != 0);
            }
        }
    }

    [Fact]
    public void A_reticle_eyepiece_is_needed_exactly_where_the_kit_lacks_one_that_serves()
    {
        var needing = 0;
        foreach (var (drawn, bench) in EveryBench().Where(one => one.Drawn.Problem.Demands.ReticleLeastPower is not null))
        {
            Item[] wares = [.. drawn.Ground.Reticles.SelectMany(offer => offer.Wares).Select(ware => ware.Item)];
            Item[] serving = [.. wares.Where(item => IsReticleRight(drawn.KitOf(bench, [], item)))];
            var isRight = IsReticleRight(drawn.KitOf(bench, []));
            Assert.Equal(isRight ? [] : serving, bench.Reticle.Serving.Select(ware => ware.Item));
            Assert.Equal(isRight || serving.Length > 0, bench.Reticle.IsPossible);
            needing += bench.Reticle.Count;
        }

        Assert.True(needing > 10, $"only {needing} benches need a reticle eyepiece");
    }

    [Fact]
    public void Unless_one_is_asked_for_no_reticle_eyepiece_is_needed() => Assert.All(
        EveryBench().Where(one => one.Drawn.Problem.Demands.ReticleLeastPower is null),
        one => Assert.Equal(0, one.Bench.Reticle.Count));

    [Fact]
    public void What_is_left_of_money_and_number_is_what_the_settled_items_and_the_cheapest_reticle_leave()
    {
        foreach (var (drawn, bench) in EveryBench().Where(one => one.Bench.Reticle.IsPossible))
        {
            Item[] settled = [.. bench.Settled, .. bench.Reticle.Serving.Select(ware => ware.Item).OrderBy(item => item.Price).Take(1)];
            Assert.Equal(drawn.Problem.Limits.Budget - settled.Sum(item => item.Price), bench.MoneyLeft.ToDecimal());
            Assert.Equal(drawn.Problem.Limits.MaxPurchases - settled.Length, bench.CountLeft);
            Assert.All(bench.Reticle.Serving, ware => Assert.Equal(
                bench.MoneyLeft - bench.Reticle.ExtraPrice(ware.Item),
                Money.Of(drawn.Problem.Limits.Budget - bench.Settled.Sum(item => item.Price) - ware.Item.Price)));
            Assert.Equal(Money.Zero, bench.Reticle.ExtraPrice(null));
        }
    }

    [Fact]
    public void A_bench_is_possible_exactly_if_what_is_settled_breaks_no_limit()
    {
        foreach (var (drawn, bench) in EveryBench())
        {
            Item[] cheapest = [.. bench.Reticle.Serving.Select(ware => ware.Item).OrderBy(item => item.Price).Take(1)];
            var breaches = Breaches.Of(drawn.KitOf(bench, [], cheapest)).Where(breach => breach is not Breach.MustFrame);
            Assert.Equal(bench.IsPossible, !breaches.Any());
        }
    }

    [Fact]
    public void No_set_has_a_lesser_step_than_everything_together()
    {
        foreach (var (drawn, bench, places) in BenchesAndSets())
        {
            Assert.True(bench.LeastStep.Ln <= drawn.FiguresOf(drawn.KitOf(bench, places)).LargestStep.Ln + Rounding);
        }
    }

    [Fact]
    public void Everything_together_has_exactly_that_step()
    {
        foreach (var (drawn, bench) in EveryBench())
        {
            var everything = drawn.KitOf(bench, Enumerable.Range(0, drawn.Ground.Oculars.Length));
            Assert.Equal(drawn.FiguresOf(everything).LargestStep.Ln, bench.LeastStep.Ln, Rounding);
        }
    }

    [Fact]
    public void No_ocular_adds_more_points_than_the_most_and_a_zoom_more_than_can_be_counted()
    {
        foreach (var (drawn, bench) in EveryBench())
        {
            for (var t = 0; t < drawn.Problem.Telescopes.Length; t++)
            {
                Sight[][] here =
                [
                    .. Enumerable.Range(0, bench.OcularCount).Select(place => bench.SightsOf(place).ToArray().Where(sight => sight.Telescope == t).ToArray())
                ];
                Assert.All(here, sights => Assert.True(sights.Length <= bench.MostPointsIn(t)));
                Assert.Equal(here.Any(sights => sights.Any(sight => sight.Shows.IsZoom)), bench.MostPointsIn(t) >= int.MaxValue);
            }
        }
    }

    private static bool IsReticleRight(Kit kit) => !Breaches.Of(kit).Any(breach => breach is Breach.Reticle or Breach.Reticles);

    private static uint FramingsOpenIn(Kit kit)
    {
        var demands = kit.Problem.Demands.MustFrame;
        return demands.Select((demand, i) => FramingRule.Frames(kit, demand.WidthDeg, demand.TelescopeIndex) ? 0 : 1u << i).Aggregate(0u, (a, b) => a | b);
    }

    private static IEnumerable<(Drawn Drawn, Bench Bench)> EveryBench() =>
        Drawn.Problems(Problems).SelectMany(drawn => BarlowSet.All(drawn.Ground).Select(set => (drawn, new Bench(drawn.Ground, set))));

    private static IEnumerable<(Drawn Drawn, Bench Bench, int[] Places)> BenchesAndSets() =>
        EveryBench().SelectMany(one => one.Drawn.SetsOfPlaces(SetsPerBench, MostPlaces).Select(places => (one.Drawn, one.Bench, places)));
}
