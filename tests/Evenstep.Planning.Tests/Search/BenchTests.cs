using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

/// <summary>What a bench says of its oculars, held against kits in plain code.</summary>
public class BenchTests
{
    private const int Problems = 150;
    private const double Rounding = 1e-9;

    [Fact]
    public void Overlaps_shown_alone_and_between_add_up_to_those_of_the_kit()
    {
        var compared = 0;
        foreach (var (ground, bench, random) in Benches())
        {
            int[] chosen = [.. Enumerable.Range(0, bench.Sights.Length).OrderBy(_ => random.Next()).Take(random.Next(4))];
            var kit = Kit.Of(ground.Problem, bench.Settled.Concat(chosen.Select(place => ground.Oculars[place].Item)));
            var between = chosen.SelectMany((a, i) => chosen.Skip(i + 1).Select(b => bench.OverlapsWith(a)[b])).Sum();
            var shown = ground.Problem.Limits.AllowedOverlaps - bench.OverlapsLeft;
            Assert.Equal(kit.OverlapsThroughPurchases(), shown + chosen.Sum(bench.OverlapsOf) + between);
            compared++;
        }

        Assert.True(compared > Problems);
    }

    [Fact]
    public void No_set_does_better_than_everything_together()
    {
        foreach (var (ground, bench, random) in Benches())
        {
            var chosen = ground.Oculars.Where(_ => random.Next(3) == 0).Select(offer => offer.Item);
            var figures = Kit.Of(ground.Problem, bench.Settled.Concat(chosen)).Figures;
            Assert.True(bench.LnLeastStep <= figures.LnLargestStep + Rounding);
            Assert.True(bench.LeastExcess <= figures.MeanExcess + Rounding);
        }
    }

    [Fact]
    public void A_framing_is_met_by_what_makes_the_kit_meet_it()
    {
        foreach (var (ground, bench, _) in Benches().Where(one => one.Ground.Framings.Length > 0))
        {
            for (var place = 0; place < bench.Sights.Length; place++)
            {
                var kit = Kit.Of(ground.Problem, bench.Settled.Add(ground.Oculars[place].Item));
                for (var i = 0; i < ground.Framings.Length; i++)
                {
                    var isMet = (bench.OpenFramings & ~bench.FramingsMet(place) & (1u << i)) == 0;
                    Assert.Equal(Breaches.Frames(kit, ground.Framings[i].WidthDeg, ground.Framings[i].TelescopeIndex), isMet);
                }
            }
        }
    }

    [Fact]
    public void Barlow_sets_are_those_within_the_limits_each_once_the_cheap_before_the_dear()
    {
        foreach (var ground in Grounds())
        {
            BarlowSet[] sets = [.. BarlowSet.All(ground)];
            Assert.Equal(sets.Length, sets.Select(set => string.Join(' ', set.Bought.Select(item => item.Id).Order(StringComparer.Ordinal))).Distinct().Count());
            Assert.Equal(sets.OrderBy(set => set.Cost).Select(set => set.Cost), sets.Select(set => set.Cost));
            Assert.All(sets, set => Assert.True(set.Bought.Length <= ground.Problem.Limits.MaxBarlows));
            Assert.All(sets, set => Assert.All(ground.Musts.Where(item => item.IsBarlow), must => Assert.Contains(must, set.Bought)));
        }
    }

    /// <summary>Where an item that must be bought is no candidate, the search does not begin.</summary>
    internal static IEnumerable<Groundwork> Grounds() => Enumerable.Range(400_000, Problems).Select(seed =>
    {
        var problem = Bridge.ToProblem(RandomProblems.Make(seed));
        return new Groundwork(problem, Candidacy.Of(problem));
    }).Where(ground => ground.Musts.Length == ground.Problem.Demands.MustInclude.Length);

    internal static IEnumerable<(Groundwork Ground, Bench Bench, Random Random)> Benches() => Grounds()
        .SelectMany((ground, i) => BarlowSet.All(ground).Select(set => (ground, new Bench(ground, set), new Random(i))));
}
