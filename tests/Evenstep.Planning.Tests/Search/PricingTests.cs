using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

public class PricingTests
{
    private const int Problems = 150;
    private const double UnitsPerScore = 1e7;

    [Theory]
    [InlineData(Prefer.LowPrice)]
    [InlineData(Prefer.WideField)]
    [InlineData(Prefer.LongEyeRelief)]
    [InlineData(Prefer.LightWeight)]
    public void Preferences_that_add_up_are_the_score_to_within_half_a_unit_an_item(Prefer prefer)
    {
        foreach (var (problem, set) in ProblemsAndSets(prefer))
        {
            var cost = new Pricing(problem).Of(set);
            Assert.InRange(cost.Preference - (new PreferenceScore(problem).Of(set) * UnitsPerScore), -0.5 * (set.Length + 1), 0.5 * (set.Length + 1));
        }
    }

    [Fact]
    public void Of_parfocal_groups_the_preference_is_their_number()
    {
        foreach (var (problem, set) in ProblemsAndSets(Prefer.Parfocal))
        {
            var pricing = new Pricing(problem);
            Assert.True(pricing.CountsParfocalGroups);
            Assert.Equal(new PreferenceScore(problem).Of(set), pricing.Of(set).Preference);
            Assert.All(set, item => Assert.Equal(0, pricing.Of(item).Preference));
        }
    }

    [Theory]
    [InlineData(Prefer.LowPrice)]
    [InlineData(Prefer.LightWeight)]
    [InlineData(Prefer.Parfocal)]
    public void Price_and_number_are_those_of_the_set_whatever_is_preferred(Prefer prefer)
    {
        foreach (var (problem, set) in ProblemsAndSets(prefer))
        {
            var cost = new Pricing(problem).Of(set);
            Assert.Equal(set.Sum(item => item.Price), cost.Price.ToDecimal());
            Assert.Equal(set.Length, cost.Count);
        }
    }

    [Theory]
    [InlineData(Prefer.LowPrice)]
    [InlineData(Prefer.WideField)]
    [InlineData(Prefer.LongEyeRelief)]
    [InlineData(Prefer.LightWeight)]
    public void A_set_costs_the_sum_of_what_its_items_cost(Prefer prefer)
    {
        foreach (var (problem, set) in ProblemsAndSets(prefer))
        {
            var pricing = new Pricing(problem);
            Assert.Equal(set.Select(pricing.Of).Aggregate(default(Cost), (a, b) => a + b), pricing.Of(set));
        }
    }

    [Fact]
    public void Two_items_that_differ_in_nothing_but_their_ids_differ_in_the_ties_alone()
    {
        var pricing = new Pricing(Some.Problem());
        var (a, b) = (pricing.Of(Some.Eyepiece(10, id: "a")), pricing.Of(Some.Eyepiece(10, id: "b")));
        Assert.NotEqual(a.Ties, b.Ties);
        Assert.Equal(a with { Ties = 0 }, b with { Ties = 0 });
    }

    /// <summary>Alike items can stand in for each other, so that of two in a set with anything else only their own cost matters.</summary>
    [Theory]
    [InlineData(Prefer.LowPrice)]
    [InlineData(Prefer.LightWeight)]
    [InlineData(Prefer.Parfocal)]
    public void What_is_never_worse_costs_no_more_with_anything_else(Prefer prefer)
    {
        foreach (var (problem, set) in ProblemsAndSets(prefer))
        {
            var pricing = new Pricing(problem);
            foreach (var (a, b) in NeverWorse(problem, pricing))
            {
                var others = set.Except([a, b]).ToArray();
                Assert.True(WithoutTies(pricing.Of([.. others, a])) <= WithoutTies(pricing.Of([.. others, b])), $"{a} {b}");
            }
        }
    }

    [Theory]
    [InlineData(null, null, true)]
    [InlineData("one", null, true)]
    [InlineData("one", "one", true)]
    [InlineData(null, "one", false)]
    [InlineData("two", "one", false)]
    public void For_parfocal_kits_an_item_stands_in_for_one_of_its_group_or_of_none(string? group, string? other, bool standsIn)
    {
        var pricing = new Pricing(Preferring(Some.Problem(), Prefer.Parfocal));
        Assert.Equal(standsIn, pricing.IsNeverWorse(Ware("a", group), Ware("b", other)));

        Ware Ware(string id, string? parfocalGroup)
        {
            var item = new Item(id, new Eyepiece(10, 50, 16, Barrel.Inch125)) { Price = 10, ParfocalGroup = parfocalGroup };
            return new Ware(item, pricing.Of(item));
        }
    }

    private static IEnumerable<(Item A, Item B)> NeverWorse(PurchaseProblem problem, Pricing pricing)
    {
        Ware[] wares = [.. problem.Catalogue.Select(item => new Ware(item, pricing.Of(item)))];
        return from a in wares
               from b in wares
               where a.Item != b.Item && a.Item.Optic.GetType() == b.Item.Optic.GetType() && pricing.IsNeverWorse(a, b)
               select (a.Item, b.Item);
    }

    private static Cost WithoutTies(Cost cost) => cost with { Ties = 0 };

    private static IEnumerable<(PurchaseProblem Problem, Item[] Set)> ProblemsAndSets(Prefer prefer) =>
        Drawn.Problems(Problems).Select(drawn =>
        {
            var random = new Random(drawn.Seed);
            var set = RandomProblems.InAnotherOrder(drawn.Problem.Catalogue.Except(drawn.Problem.Owned), random);
            return (Preferring(drawn.Problem, prefer), set[..Math.Min(set.Length, random.Next(5))]);
        });

    private static PurchaseProblem Preferring(PurchaseProblem problem, Prefer prefer) =>
        problem with { Preferences = problem.Preferences with { Prefer = prefer } };
}
