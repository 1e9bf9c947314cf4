using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>How a problem is laid out for the search.</summary>
public class GroundworkTests
{
    private const int Problems = 100;

    [Fact]
    public void Oculars_lie_the_cheap_before_the_dear() => Assert.All(
        Drawn.Problems(Problems),
        drawn => Assert.Equal(drawn.Ground.LeastPrices.Order(), drawn.Ground.LeastPrices));

    [Fact]
    public void Up_to_a_price_lies_just_what_costs_no_more_and_shows_what_it_showed()
    {
        var fewer = 0;
        foreach (var drawn in Drawn.Problems(Problems).Where(drawn => drawn.Ground.Oculars.Length > 1))
        {
            var middle = drawn.Ground.LeastPrices[drawn.Ground.LeastPrices.Length / 2];
            var below = drawn.Ground.UpTo(middle);
            Assert.Equal(drawn.Ground.Oculars.Where(offer => offer.Wares[0].Cost.Price <= middle), below.Oculars);
            foreach (var set in BarlowSet.All(drawn.Ground))
            {
                var (all, some) = (new Bench(drawn.Ground, set), new Bench(below, set));
                Assert.Equal(all.Shown.Select(sight => sight.ToString()), some.Shown.Select(sight => sight.ToString()));
                Assert.All(Enumerable.Range(0, some.OcularCount), place => Assert.Equal(all.SightsOf(place).ToArray(), some.SightsOf(place).ToArray()));
            }

            fewer += below.Oculars.Length < drawn.Ground.Oculars.Length ? 1 : 0;
        }

        Assert.True(fewer > Problems / 4, $"only {fewer} problems have fewer oculars");
    }
}
