using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

public class OfferTests
{
    private const int Problems = 200;
    private const int ProblemsToTryAllSetsOf = 60;
    private const int ContextsPerProblem = 5;
    private const int MostOthers = 3;
    private const double Rounding = 1e-9;

    [Fact]
    public void Items_are_in_one_offer_exactly_if_they_are_alike()
    {
        foreach (var (drawn, offers) in ProblemsAndOffers())
        {
            var likenesses = offers.Select(offer => Likeness.Of(drawn.Problem, offer.Item)).ToArray();
            Assert.Distinct(likenesses);
            Assert.All(offers.Zip(likenesses), pair => Assert.All(
                pair.First.Wares,
                ware => Assert.Equal(pair.Second, Likeness.Of(drawn.Problem, ware.Item))));
        }
    }

    [Fact]
    public void Whatever_may_be_bought_is_on_offer_or_beaten_by_an_alike_ware_that_is()
    {
        var beaten = 0;
        foreach (var (drawn, offers) in ProblemsAndOffers())
        {
            Assert.Distinct(offers.SelectMany(offer => offer.Wares).Select(ware => ware.Item));
            foreach (var (item, offer) in Choices(drawn).Select(item => (item, OfferOf(drawn, offers, item))))
            {
                var ware = new Ware(item, drawn.Ground.Pricing.Of(item));
                if (!offer.Wares.Contains(ware))
                {
                    Assert.Contains(offer.Wares, other => drawn.Ground.Pricing.IsNeverWorse(other, ware));
                    beaten++;
                }
            }
        }

        Assert.True(beaten > Problems / 2, $"only {beaten} items are beaten");
    }

    [Fact]
    public void No_ware_on_offer_is_beaten_by_a_cheaper_one()
    {
        foreach (var (drawn, offers) in ProblemsAndOffers())
        {
            Assert.All(offers, offer => Assert.All(
                offer.Wares.Index(),
                ware => Assert.DoesNotContain(offer.Wares[..ware.Index], cheaper => drawn.Ground.Pricing.IsNeverWorse(cheaper, ware.Item))));
        }
    }

    [Fact]
    public void The_cheapest_comes_first()
    {
        foreach (var offer in ProblemsAndOffers().SelectMany(one => one.Offers))
        {
            Assert.Equal(offer.Wares.Select(ware => ware.Cost.Price).Order(), offer.Wares.Select(ware => ware.Cost.Price));
            Assert.Same(offer.Wares[0].Item, offer.Item);
        }
    }

    [Fact]
    public void Of_two_wares_that_cost_the_same_the_first_by_the_fixed_rule_is_kept_in_whatever_order_they_come()
    {
        var problem = Some.Problem();
        Item[] alike = [Some.Eyepiece(10, id: "a"), Some.Eyepiece(10, id: "b"), Some.Eyepiece(10, id: "c")];
        var pricing = new Pricing(problem);
        var first = alike.MinBy(item => pricing.Of(item).Ties);
        Assert.Equal(first, Assert.Single(Assert.Single(Offer.Among(problem, pricing, alike)).Wares).Item);
        Assert.Equal(first, Assert.Single(Assert.Single(Offer.Among(problem, pricing, [.. alike.Reverse()])).Wares).Item);
    }

    [Fact]
    public void A_dearer_ware_stays_on_offer_if_it_is_preferred()
    {
        var problem = Some.Problem() with { Preferences = new Preferences { Prefer = Prefer.LightWeight } };
        Item[] alike = [Costing("cheap", 50, grams: 300), Costing("dear", 90, grams: 200)];
        Assert.Equal(alike, Assert.Single(Offer.Among(problem, new Pricing(problem), alike)).Wares.Select(ware => ware.Item));
    }

    /// <summary>Whatever else is bought: for any of them, or several, one ware on offer scores, costs and counts no more.</summary>
    [Fact]
    public void Beside_anything_one_ware_on_offer_does_as_well_as_any_alike_items()
    {
        foreach (var (drawn, offers) in ProblemsAndOffers())
        {
            var score = new PreferenceScore(drawn.Problem);
            foreach (var alike in Choices(drawn).GroupBy(item => OfferOf(drawn, offers, item)).Where(group => group.Count() > 1))
            {
                foreach (var others in Others(drawn, alike))
                {
                    Assert.All(SomeOf([.. alike]), some => Assert.Contains(alike.Key.Wares, ware =>
                        ware.Item.Price <= some.Sum(item => item.Price)
                        && score.Of([.. others, ware.Item]) <= score.Of([.. others, .. some]) + Rounding));
                }
            }
        }
    }

    [Fact]
    public void Every_allowed_set_has_one_of_wares_on_offer_that_shows_the_same_and_is_no_worse()
    {
        var replaced = 0;
        foreach (var (drawn, offers) in ProblemsAndOffers().Take(ProblemsToTryAllSetsOf))
        {
            var allowed = Exhaustive.AllowedSets(drawn.Oracle).ToDictionary(set => string.Join(' ', set.Ids));
            var wares = offers.SelectMany(offer => offer.Wares).Select(ware => ware.Item.Id).ToHashSet();
            foreach (var set in allowed.Values)
            {
                Assert.Contains(StandIns(drawn, offers, set.Ids), ids =>
                    allowed.TryGetValue(string.Join(' ', ids.Order(StringComparer.Ordinal)), out var other) && IsNoWorse(other, set));
                replaced += set.Ids.All(wares.Contains) ? 0 : 1;
            }
        }

        Assert.True(replaced > ProblemsToTryAllSetsOf, $"only {replaced} sets hold what is beaten");
    }

    private static Item Costing(string id, decimal price, double grams) =>
        new(id, new Eyepiece(10, 50, 16, Barrel.Inch125)) { Price = price, MassGrams = grams };

    private static bool IsNoWorse(OraclePlan other, OraclePlan set) =>
        other.Price <= set.Price
        && other.Ids.Count <= set.Ids.Count
        && other.PreferenceValue <= set.PreferenceValue + Rounding
        && other.Figures.Counting.LnLargestStep <= set.Figures.Counting.LnLargestStep + Rounding
        && other.Figures.Counting.MeanExcess <= set.Figures.Counting.MeanExcess + Rounding;

    /// <summary>The sets with one ware of each offer that a set buys from.</summary>
    private static IEnumerable<IEnumerable<string>> StandIns(Drawn drawn, Offer[] offers, IReadOnlyList<string> ids)
    {
        string[] musts = [.. drawn.Ground.Musts.Select(item => item.Id)];
        var touched = drawn.Ground.Candidacy.Candidates
            .Where(item => ids.Contains(item.Id) && !musts.Contains(item.Id))
            .Select(item => OfferOf(drawn, offers, item))
            .Distinct();
        return touched.Aggregate(
            (IEnumerable<IEnumerable<string>>)[musts],
            (sets, offer) => sets.SelectMany(set => offer.Wares.Select(ware => set.Append(ware.Item.Id))));
    }

    private static IEnumerable<(Drawn Drawn, Offer[] Offers)> ProblemsAndOffers() => Drawn.Problems(Problems)
        .Select(drawn => (drawn, new[] { drawn.Ground.Oculars, drawn.Ground.Barlows, drawn.Ground.Reticles }.SelectMany(offers => offers).ToArray()));

    private static IEnumerable<Item> Choices(Drawn drawn) => drawn.Ground.Candidacy.Candidates.Except(drawn.Ground.Musts);

    private static Offer OfferOf(Drawn drawn, Offer[] offers, Item item)
    {
        var likeness = Likeness.Of(drawn.Problem, item);
        return offers.Single(offer => Likeness.Of(drawn.Problem, offer.Item) == likeness);
    }

    private static IEnumerable<Item[]> Others(Drawn drawn, IEnumerable<Item> alike)
    {
        var random = new Random(drawn.Seed);
        Item[] others = [.. Choices(drawn).Except(alike)];
        return Enumerable.Range(0, ContextsPerProblem).Select(_ =>
            RandomProblems.InAnotherOrder(others, random)[..Math.Min(others.Length, random.Next(MostOthers + 1))]);
    }

    private static IEnumerable<Item[]> SomeOf(Item[] items) =>
        Enumerable.Range(1, (1 << items.Length) - 1).Select(set => items.Where((_, i) => (set & (1 << i)) != 0).ToArray());
}
