using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>What the descent promises of the sets that it notes, and what the bounds promise of the sets below a node.</summary>
public class DescentTests
{
    private const long ManyNodes = 200_000;
    private const double Rounding = 1e-9;

    [Fact]
    public void Every_set_noted_is_allowed_keeps_to_the_step_and_is_met_once()
    {
        var noted = 0;
        foreach (var (ground, bench, random) in BenchTests.Benches().Where(one => one.Bench.IsPossible))
        {
            var lnStep = (0.3 + random.NextDouble()) * ground.Problem.Telescopes.Max(telescope => telescope.Axis.Length);
            var all = Descend(ground, bench, lnStep);
            Assert.Equal(all.Sets.Count, all.Sets.Select(set => string.Join(' ', set)).Distinct().Count());
            foreach (var set in all.Sets)
            {
                var kit = Kit.Of(ground.Problem, set);
                Assert.Empty(Breaches.Of(kit));
                Assert.True(kit.Figures.LnLargestStep <= lnStep + Rounding);
                noted++;
            }
        }

        Assert.True(noted > 500, $"only {noted} sets were noted");
    }

    /// <summary>All that ends a branch early rests on this.</summary>
    [Fact]
    public void No_set_below_the_root_has_less_excess_or_costs_less_than_the_root_promises()
    {
        foreach (var (ground, bench, _) in BenchTests.Benches().Where(one => one.Bench.IsPossible))
        {
            var root = Node.Chain(ground)[0];
            root.Begin(bench, extraCents: 0);
            var prospect = root.ProspectOf(root.CountLeft);
            var settled = ground.Pricing.Of([.. bench.Settled]);
            foreach (var set in Descend(ground, bench, lnStep: double.MaxValue / 4).Sets)
            {
                var kit = Kit.Of(ground.Problem, set);
                var gained = root.Excess - kit.Figures.MeanExcess;
                Assert.True(kit.Figures.MeanExcess >= prospect.LeastExcess - Rounding);
                Assert.True(ground.Pricing.Of([.. set]).Cents >= settled.Cents + prospect.LeastCostOf(gained - Rounding).Cents);
            }
        }
    }

    private static EverySet Descend(Groundwork ground, Bench bench, double lnStep)
    {
        var chain = Node.Chain(ground);
        chain[0].Begin(bench, bench.ExtraCents(bench.CheapestReticle));
        var settled = bench.CheapestReticle is { } reticle ? bench.Settled.Add(reticle) : bench.Settled;
        var all = new EverySet();
        Descent.Run(bench, chain, lnStep, all, new Effort(ManyNodes, CancellationToken.None), new Solving.Search.Path(ground.Pricing, settled));
        return all;
    }

    /// <summary>Notes every set, prunes nothing, and always asks for more.</summary>
    private sealed class EverySet : Goal
    {
        public List<Item[]> Sets { get; } = [];

        public override bool IsHopeless(Node node, Solving.Search.Path path) => false;

        public override bool IsWorthTrying(in Prospect prospect, double gain, Cost cost) => true;

        public override bool Note(Node node, Solving.Search.Path path)
        {
            Sets.Add([.. path.Select().Items]);
            node.RefreshGains();
            return true;
        }
    }
}
