using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>What the bounds promise of the sets below a node.</summary>
public class ProspectTests
{
    private const int Problems = 300;
    private const int SetsOfEach = 20;
    private const double Rounding = 1e-9;

    /// <summary>All that ends a branch early rests on this.</summary>
    [Fact]
    public void No_set_below_the_root_has_less_excess_or_more_quality_or_costs_less_than_the_root_promises()
    {
        foreach (var drawn in Drawn.Problems(Problems))
        {
            foreach (var bench in drawn.Benches())
            {
                var root = Node.Chain(drawn.Ground)[0];
                var measure = QualityMeasure.Of(drawn.Problem, drawn.Ground.Candidacy.Telescopes, drawn.Problem.EnoughStep);
                root.Measure(measure);
                root.Begin(bench, extraPrice: Money.Zero);
                var prospects = root.ProspectsOf(root.CountLeft);
                var settled = drawn.Ground.Pricing.Of([.. bench.Settled]);
                foreach (var places in drawn.SetsOfPlaces(SetsOfEach, root.CountLeft))
                {
                    var kit = drawn.KitOf(bench, places);
                    var excess = kit.FiguresIn(drawn.Ground.Candidacy.Telescopes).MeanExcess;
                    var quality = measure.Of(kit);
                    var spent = drawn.Ground.Pricing.Of([.. kit.Purchases]).Price - settled.Price;
                    var isOffered = places.All(place => root.Options.Take(root.OptionCount).Any(option => option.Place == place));
                    if (isOffered)
                    {
                        Assert.True(excess >= prospects.LeastExcess - Rounding);
                        Assert.True(spent >= prospects.LessExcess.LeastCostOf(root.Excess - excess - Rounding).Price);
                        Assert.True(quality <= prospects.MostQuality + Rounding);
                        Assert.True(spent >= prospects.MoreQuality.LeastCostOf(quality - root.Quality - Rounding).Price);
                    }
                }
            }
        }
    }
}
