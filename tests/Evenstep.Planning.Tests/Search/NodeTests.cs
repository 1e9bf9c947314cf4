using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

public class NodeTests
{
    private const int Problems = 150;
    private const int FurtherSets = 6;
    private const double Rounding = 1e-12;

    [Fact]
    public void A_node_has_the_figures_of_the_kit_that_it_stands_for()
    {
        foreach (var (drawn, _, node, kit) in EveryNode())
        {
            var figures = drawn.FiguresOf(kit);
            Assert.Equal(figures.MeanExcess, node.Excess, Rounding);
            Assert.Equal(figures.LargestStep.Ln, node.LargestStep().Ln, Rounding);
            Assert.Equal(drawn.Problem.Telescopes.Length, node.Telescopes.Count);
        }
    }

    [Fact]
    public void What_is_left_is_what_the_limits_leave_the_kit()
    {
        foreach (var (drawn, bench, node, kit) in EveryNode())
        {
            var spent = kit.TotalPrice - bench.Settled.Sum(item => item.Price);
            Assert.Equal(bench.MoneyLeft.ToDecimal() - spent, node.MoneyLeft.ToDecimal());
            Assert.Equal(bench.CountLeft - (kit.Purchases.Length - bench.Settled.Length), node.CountLeft);
            Assert.Equal(drawn.Problem.Limits.AllowedOverlaps - kit.OverlapsThroughPurchases(), node.OverlapsLeft);
            Assert.Equal(
                drawn.Problem.Demands.MustFrame.Select(demand => !FramingRule.Frames(kit, demand.WidthDeg, demand.TelescopeIndex)),
                drawn.Problem.Demands.MustFrame.Select((_, i) => (node.OpenFramings & (1u << i)) != 0));
        }
    }

    [Fact]
    public void The_options_are_the_oculars_that_no_limit_forbids()
    {
        var forbidden = 0;
        foreach (var (drawn, bench, node, kit) in EveryNode().Where(one => one.Node.CountLeft > 0))
        {
            var isWithin = Enumerable.Range(0, drawn.Ground.Oculars.Length)
                .Where(place => !kit.Purchases.Contains(drawn.Ground.Oculars[place].Item))
                .ToLookup(place => KeepsLimits(drawn, bench, Kit.Of(drawn.Problem, kit.Purchases.Add(drawn.Ground.Oculars[place].Item))));
            Assert.Equal(isWithin[true], Options(node).Select(option => option.Place).Order());
            forbidden += isWithin[false].Count();
        }

        Assert.True(forbidden > Problems, $"only {forbidden} oculars are forbidden");
    }

    [Fact]
    public void An_option_says_what_overlaps_it_would_bring()
    {
        foreach (var (drawn, _, node, kit) in EveryNode())
        {
            Assert.All(Options(node), option => Assert.Equal(
                Kit.Of(drawn.Problem, kit.Purchases.Add(drawn.Ground.Oculars[option.Place].Item)).OverlapsThroughPurchases(),
                kit.OverlapsThroughPurchases() + option.Overlaps));
        }
    }

    [Fact]
    public void An_option_gains_no_more_than_it_says()
    {
        foreach (var (drawn, _, node, kit) in EveryNode())
        {
            Assert.All(Options(node), option => Assert.True(GainOf(drawn, kit, option) <= option.Gain + Rounding));
        }
    }

    /// <summary>Of several views in one telescope each is reckoned alone, so that their gain may still be less than that.</summary>
    [Fact]
    public void Refreshed_an_option_says_no_more_than_before_and_what_it_gains_by_a_view_a_telescope_exactly()
    {
        foreach (var (drawn, bench, node, kit) in EveryNode())
        {
            var before = Options(node).ToDictionary(option => option.Place, option => option.Gain);
            node.RefreshGains();
            Assert.All(Options(node), option => Assert.InRange(option.Gain, GainOf(drawn, kit, option) - Rounding, before[option.Place] + Rounding));
            var ofOneView =
                Options(node).Where(option => bench.SightsOf(option.Place).ToArray().GroupBy(sight => sight.Telescope).All(here => here.Count() == 1));
            Assert.All(ofOneView, option => Assert.Equal(GainOf(drawn, kit, option), option.Gain, Rounding));
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void No_further_options_gain_more_than_the_best_gains(bool isRefreshed)
    {
        foreach (var (drawn, _, node, kit) in EveryNode())
        {
            if (isRefreshed)
            {
                node.RefreshGains();
            }

            foreach (var places in FurtherPlaces(drawn, node))
            {
                var further = Kit.Of(drawn.Problem, [.. kit.Purchases, .. places.Select(place => drawn.Ground.Oculars[place].Item)]);
                Assert.True(drawn.FiguresOf(kit).MeanExcess - drawn.FiguresOf(further).MeanExcess <= node.BestGains(places.Length, GainIn.Excess) + Rounding);
            }
        }
    }

    [Fact]
    public void The_best_gains_are_the_sum_of_the_greatest()
    {
        foreach (var (_, _, node, _) in EveryNode())
        {
            for (var choices = 0; choices <= node.CountLeft; choices++)
            {
                var greatest = Options(node).Select(option => Math.Max(0, option.Gain)).OrderDescending().Take(choices).Sum();
                Assert.Equal(greatest, node.BestGains(choices, GainIn.Excess), Rounding);
            }
        }
    }

    [Fact]
    public void What_is_dropped_is_gone_here_and_below_and_nothing_else_is()
    {
        foreach (var (drawn, bench) in EveryBench())
        {
            var chain = Node.Chain(drawn.Ground);
            chain[0].Begin(bench, Money.Zero);
            if (chain[0].OptionCount < 2 || chain.Length < 2)
            {
                continue;
            }

            var (dropped, chosen) = (chain[0].Options[0], chain[0].Options[1]);
            int[] before = [.. Options(chain[0]).Select(option => option.Place)];
            chain[0].Drop(dropped.Place);
            Assert.Equal(before.Where(place => place != dropped.Place).Order(), Options(chain[0]).Select(option => option.Place).Order());
            chain[1].Become(chain[0], chosen, bench.LeastPrice(chosen.Place), Money.MaxValue);
            chain[1].Inherit(chain[0], chosen.Place);
            Assert.DoesNotContain(Options(chain[1]), option => option.Place == dropped.Place);
        }
    }

    [Fact]
    public void Money_spent_beforehand_is_not_left()
    {
        foreach (var (drawn, bench) in EveryBench())
        {
            var extra = new Money(bench.MoneyLeft.Hundredths / 2);
            var first = Node.Chain(drawn.Ground)[0];
            first.Begin(bench, extra);
            Assert.Equal(bench.MoneyLeft - extra, first.MoneyLeft);
            Assert.All(Options(first), option => Assert.True(bench.LeastPrice(option.Place) <= first.MoneyLeft));
        }
    }

    private static IEnumerable<(Drawn Drawn, Bench Bench)> EveryBench() =>
        Drawn.Problems(Problems).SelectMany(drawn => drawn.Benches().Select(bench => (drawn, bench)));

    /// <summary>Down from the first node of every bench, a random option a step, with the kit that each node stands for.</summary>
    private static IEnumerable<(Drawn Drawn, Bench Bench, Node Node, Kit Kit)> EveryNode()
    {
        foreach (var (drawn, bench) in EveryBench())
        {
            var random = new Random(drawn.Seed);
            var chain = Node.Chain(drawn.Ground);
            chain[0].Begin(bench, Money.Zero);
            var kit = drawn.KitOf(bench, []);
            yield return (drawn, bench, chain[0], kit);
            for (var depth = 1; depth < chain.Length && chain[depth - 1].OptionCount > 0; depth++)
            {
                var option = chain[depth - 1].Options[random.Next(chain[depth - 1].OptionCount)];
                chain[depth].Become(chain[depth - 1], option, bench.LeastPrice(option.Place), Money.MaxValue);
                chain[depth].Inherit(chain[depth - 1], option.Place);
                kit = Kit.Of(drawn.Problem, kit.Purchases.Add(drawn.Ground.Oculars[option.Place].Item));
                yield return (drawn, bench, chain[depth], kit);
            }
        }
    }

    private static Option[] Options(Node node) => node.Options[..node.OptionCount];

    private static double GainOf(Drawn drawn, Kit kit, Option option) =>
        drawn.FiguresOf(kit).MeanExcess - drawn.FiguresOf(Kit.Of(drawn.Problem, kit.Purchases.Add(drawn.Ground.Oculars[option.Place].Item))).MeanExcess;

    /// <summary>Money is judged by what the bench leaves, which may have a reticle eyepiece to pay for.</summary>
    private static bool KeepsLimits(Drawn drawn, Bench bench, Kit kit) =>
        kit.OverlapsThroughPurchases() <= drawn.Problem.Limits.AllowedOverlaps
        && kit.TotalPrice - bench.Settled.Sum(item => item.Price) <= bench.MoneyLeft.ToDecimal();

    private static IEnumerable<int[]> FurtherPlaces(Drawn drawn, Node node)
    {
        var random = new Random(drawn.Seed);
        int[] places = [.. Options(node).Select(option => option.Place)];
        return Enumerable.Range(0, FurtherSets)
            .Select(_ => RandomProblems.InAnotherOrder(places, random)[..random.Next(Math.Min(places.Length, node.CountLeft) + 1)]);
    }
}
