using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Agreement;

namespace Evenstep.Planning.Tests.Search;

public class BarlowSetTests
{
    private const int Problems = 400;

    [Fact]
    public void Exactly_the_sets_within_every_limit_come_and_each_once()
    {
        var several = 0;
        foreach (var (drawn, sets) in Drawn.Problems(Problems).Select(drawn => (drawn, All(drawn.Ground))))
        {
            Assert.Equal(ByTryingAll(drawn.Ground).Order(StringComparer.Ordinal), sets.Select(Name).Order(StringComparer.Ordinal));
            Assert.Distinct(sets.Select(Name));
            several += sets.Length > 2 ? 1 : 0;
        }

        Assert.True(several > Problems / 20, $"only {several} problems leave a choice of Barlows");
    }

    [Fact]
    public void Demanded_Barlows_are_in_every_set()
    {
        foreach (var drawn in Drawn.Problems(Problems))
        {
            Item[] demanded = [.. drawn.Ground.Musts.Where(item => item.IsBarlow)];
            Assert.All(All(drawn.Ground), set => Assert.Empty(demanded.Except(set.Bought)));
        }
    }

    [Fact]
    public void The_cheap_come_before_the_dear()
    {
        foreach (var drawn in Drawn.Problems(Problems))
        {
            Cost[] costs = [.. All(drawn.Ground).Select(set => set.Cost)];
            Assert.Equal(costs.Order(), costs);
        }
    }

    [Fact]
    public void Without_Barlows_on_offer_there_is_the_set_of_none()
    {
        var problem = Some.Problem(catalogue: [Some.Eyepiece(20)]);
        Assert.Empty(Assert.Single(All(new Groundwork(problem, Candidacy.Of(problem), new WorkBudget(Comparison.WorkLimit)))).Bought);
    }

    [Theory]
    [InlineData(0, 3)]
    [InlineData(2, 0)]
    public void More_demanded_Barlows_than_a_limit_allows_leave_no_set(int maxBarlows, int maxPurchases)
    {
        var problem = Some.Problem(catalogue: [Some.Barlow(2, id: "barlow")]) with
        {
            Limits = new Limits { Budget = 1000, MaxBarlows = maxBarlows, MaxPurchases = maxPurchases },
            Demands = new Demands { MustInclude = ["barlow"] },
        };
        Assert.Empty(All(new Groundwork(problem, Candidacy.Of(problem), new WorkBudget(Comparison.WorkLimit))));
    }

    private static BarlowSet[] All(Groundwork ground) => [.. BarlowSet.All(ground)];

    private static string Name(BarlowSet set) => Name(set.Bought);

    private static string Name(IEnumerable<Item> items) => string.Join(' ', items.Select(item => item.Id).Order(StringComparer.Ordinal));

    /// <summary>Of alike Barlows no set holds two, and of those that are beaten none.</summary>
    private static IEnumerable<string> ByTryingAll(Groundwork ground)
    {
        Item[] wares = [.. ground.Barlows.SelectMany(offer => offer.Wares).Select(ware => ware.Item)];
        foreach (var chosen in Enumerable.Range(0, 1 << wares.Length).Select(set => wares.Where((_, i) => (set & (1 << i)) != 0).ToArray()))
        {
            Item[] bought = [.. ground.Musts, .. chosen];
            var limits = ground.Problem.Limits;
            var isWithin = bought.Length <= limits.MaxPurchases
                && bought.Count(item => item.IsBarlow) <= limits.MaxBarlows
                && bought.Sum(item => item.Price) <= limits.Budget
                && ground.Barlows.All(offer => offer.Wares.Count(ware => chosen.Contains(ware.Item)) <= 1);
            if (isWithin)
            {
                yield return Name(bought.Where(item => item.IsBarlow));
            }
        }
    }
}
