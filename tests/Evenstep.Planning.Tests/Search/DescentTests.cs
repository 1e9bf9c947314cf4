using Evenstep.Planning.Optics;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>
/// What a descent comes past when its goal gives nothing up. It leaves out purchases that take nothing off the excess, so
/// it does not meet every allowed set itself, but always one within it that shows as much.
/// </summary>
public class DescentTests
{
    private const int Problems = 150;
    private const double Rounding = 1e-9;

    [Fact]
    public void Every_set_met_is_allowed_and_keeps_to_the_step()
    {
        foreach (var (tried, met) in Tried.Problems(Problems).Select(tried => (tried, tried.Met())))
        {
            Assert.All(met, set => Assert.True(tried.Allowed.ContainsKey(set.Name), $"seed {tried.Drawn.Seed}: {set.Name}"));
            Assert.All(met, set => Assert.True(Tolerance.AtMost(set.LnLargestStep, tried.Step.Ln)));
        }
    }

    [Fact]
    public void Every_set_met_has_its_true_figures_and_cost()
    {
        foreach (var tried in Tried.Problems(Problems))
        {
            foreach (var set in tried.Met())
            {
                var figures = tried.Allowed[set.Name].Figures.Counting;
                Assert.Equal(figures.MeanExcess, set.Excess, Rounding);
                Assert.Equal(figures.LnLargestStep, set.LnLargestStep, Rounding);
                Assert.Equal(tried.Drawn.Ground.Pricing.Of(set.Items), set.Cost);
            }
        }
    }

    [Fact]
    public void No_set_is_met_twice() =>
        Assert.All(Tried.Problems(Problems), tried => Assert.Distinct(tried.Met().Select(set => set.Name)));

    /// <summary>Of the sets of wares on offer, no two of them alike.</summary>
    [Fact]
    public void Within_every_allowed_set_of_wares_on_offer_one_is_met_that_has_the_same_excess()
    {
        var (wanted, smaller) = (0, 0);
        foreach (var tried in Tried.Problems(Problems))
        {
            var met = tried.Met().ToDictionary(set => set.Name);
            foreach (var set in tried.KeepingToStep().Where(set => IsOnOffer(tried.Drawn.Ground, set.Ids)))
            {
                Assert.Contains(SubsetsOf(set.Ids), ids =>
                    met.TryGetValue(ids, out var one) && Math.Abs(one.Excess - set.Figures.Counting.MeanExcess) <= Rounding);
                wanted++;
                smaller += met.ContainsKey(Noted.NameOf(set.Ids)) ? 0 : 1;
            }
        }

        Assert.True(wanted > 10 * Problems && smaller > Problems, $"{wanted} sets, {smaller} of them met only in part");
    }

    [Fact]
    public void A_set_that_needs_each_of_its_purchases_is_met_itself()
    {
        var needed = 0;
        foreach (var tried in Tried.Problems(Problems))
        {
            var met = tried.Met().Select(set => set.Name).ToHashSet();
            var keeping = tried.KeepingToStep().ToDictionary(set => Noted.NameOf(set.Ids));
            foreach (var set in keeping.Values.Where(set => IsOnOffer(tried.Drawn.Ground, set.Ids)))
            {
                if (!WithoutOne(set.Ids).Any(
                    ids => keeping.TryGetValue(ids, out var less)
                        && less.Figures.Counting.MeanExcess <= set.Figures.Counting.MeanExcess + Rounding))
                {
                    Assert.Contains(Noted.NameOf(set.Ids), met);
                    needed++;
                }
            }
        }

        Assert.True(needed > Problems, $"only {needed} sets need all that they buy");
    }

    [Fact]
    public void For_every_allowed_set_one_is_met_that_is_no_worse_in_anything()
    {
        foreach (var tried in Tried.Problems(Problems).Take(Problems / 3))
        {
            var met = tried.Met();
            foreach (var set in tried.KeepingToStep())
            {
                var cost = tried.CostOf(set);
                Assert.Contains(met, one => one.Excess <= set.Figures.Counting.MeanExcess + Rounding
                    && one.Cost.Preference <= cost.Preference && one.Cost.Price <= cost.Price && one.Cost.Count <= cost.Count);
            }
        }
    }

    [Fact]
    public void Where_nothing_keeps_to_the_step_nothing_is_met()
    {
        var none = 0;
        foreach (var narrower in Tried.Problems(Problems).Select(tried => tried with { Step = tried.Step.Widened(0.7) }))
        {
            if (narrower.KeepingToStep().Count > 0)
            {
                continue;
            }

            Assert.Empty(narrower.Met());
            none++;
        }

        Assert.True(none > Problems / 5, $"only {none} steps are kept by nothing");
    }

    private static bool IsOnOffer(Groundwork ground, IReadOnlyCollection<string> ids)
    {
        var musts = ground.Musts.Select(item => item.Id).ToHashSet();
        Offer[] offers = [.. ground.Oculars, .. ground.Barlows, .. ground.Reticles];
        var bought = offers.Select(offer => offer.Wares.Count(ware => ids.Contains(ware.Item.Id))).ToArray();
        return bought.All(count => count <= 1) && bought.Sum() == ids.Count(id => !musts.Contains(id));
    }

    private static IEnumerable<string> SubsetsOf(IReadOnlyList<string> ids) =>
        Enumerable.Range(0, 1 << ids.Count).Select(set => Noted.NameOf(ids.Where((_, i) => (set & (1 << i)) != 0)));

    private static IEnumerable<string> WithoutOne(IReadOnlyList<string> ids) => ids.Select(left => Noted.NameOf(ids.Where(id => id != left)));
}
