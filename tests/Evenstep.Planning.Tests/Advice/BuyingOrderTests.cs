using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

public sealed class BuyingOrderTests
{
    private const int Draws = 400;

    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Fact]
    public void First_comes_what_leaves_the_least_largest_step()
    {
        // 100x lies nearest the middle; then 50x closes the wider of the two jumps left.
        ImmutableArray<Item> purchases = [Some.Eyepiece(5), Some.Eyepiece(10), Some.Eyepiece(20)];
        AssertOrder(Some.Problem(From25To200), purchases, "eyepiece-10", "eyepiece-20", "eyepiece-5");
    }

    [Fact]
    public void What_is_owned_is_taken_into_account()
    {
        ImmutableArray<Item> purchases = [Some.Eyepiece(5), Some.Eyepiece(20)];
        AssertOrder(Some.Problem(From25To200, owned: [Some.Eyepiece(10)]), purchases, "eyepiece-20", "eyepiece-5");
        AssertOrder(Some.Problem(From25To200, owned: [Some.Eyepiece(20)]), purchases, "eyepiece-5", "eyepiece-20");
    }

    [Fact]
    public void A_barlow_waits_for_the_eyepiece_it_needs()
    {
        ImmutableArray<Item> purchases = [Some.Barlow(3), Some.Eyepiece(20)];
        AssertOrder(Some.Problem(From25To200), purchases, "eyepiece-20", "barlow-3");
    }

    /// <summary>With 400 mm and 2x nothing would change at first; by price the Barlow would come first.</summary>
    [Fact]
    public void A_barlow_that_makes_nothing_usable_of_what_is_there_waits_though_it_is_cheap()
    {
        ImmutableArray<Item> purchases = [Some.Barlow(2, price: 10), Some.Eyepiece(20, price: 90, id: "a"), Some.Reticle(12)];
        AssertOrder(Some.Problem(From25To200, owned: [Some.Eyepiece(4.6)]), purchases, "a", "barlow-2", "reticle-12");
        AssertOrder(Some.Problem(From25To200, owned: [Some.Eyepiece(4.6), Some.Reticle(10)]), [purchases[0], Some.Reticle(12)], "barlow-2", "reticle-12");
    }

    [Fact]
    public void A_tie_goes_to_the_least_mean_excess()
    {
        // Nothing fits the second telescope, so that its whole axis stays the largest step whatever is bought.
        var small = Some.InUse(Some.Telescope(focuser: Barrel.Inch0965), 25, 200);
        var problem = Some.Problem() with { Telescopes = [From25To200, small] };
        AssertOrder(problem, [Some.Eyepiece(5, price: 10), Some.Eyepiece(10, price: 90)], "eyepiece-10", "eyepiece-5");
    }

    /// <summary>In the telescope that nothing fits, all orders are alike; in the other 5 mm fill the wider step.</summary>
    [Fact]
    public void A_telescope_that_does_not_count_decides_nothing()
    {
        var small = Some.InUse(Some.Telescope(focuser: Barrel.Inch0965), 25, 200);
        var kit = Kit.Of(Some.Problem() with { Telescopes = [From25To200, small] }, [Some.Eyepiece(5), Some.Eyepiece(10)]);

        Assert.Equal(["eyepiece-10", "eyepiece-5"], BuyingOrder.Of(kit, [0]).Select(item => item.Id));
        Assert.Equal(kit.Ladders[0].Figures, kit.FiguresIn([0]));
    }

    [Fact]
    public void Then_to_the_lower_price_and_then_to_the_id()
    {
        ImmutableArray<Item> purchases =
        [
            Some.Eyepiece(20, id: "c", price: 80), Some.Eyepiece(20, id: "b", price: 90), Some.Eyepiece(20, id: "a", price: 90),
        ];
        AssertOrder(Some.Problem(From25To200), purchases, "c", "a", "b");
    }

    [Fact]
    public void It_does_not_depend_on_the_order_of_the_list()
    {
        ImmutableArray<Item> purchases = [Some.Eyepiece(5), Some.Eyepiece(10), Some.Eyepiece(20), Some.Eyepiece(7)];
        string[] order = ["eyepiece-10", "eyepiece-20", "eyepiece-7", "eyepiece-5"];
        AssertOrder(Some.Problem(From25To200), purchases, order);
        AssertOrder(Some.Problem(From25To200), [.. purchases.Reverse()], order);
    }

    [Fact]
    public void Nothing_to_buy_has_no_order() => AssertOrder(Some.Problem(From25To200), []);

    [Fact]
    public void It_is_what_the_definition_says()
    {
        for (var seed = 0; seed < Draws; seed++)
        {
            var kit = KitDraw.Make(seed, owned: 2, bought: 5);

            Assert.Equal(OrderByDefinition(kit), BuyingOrder.Of(kit, AllOf(kit)).Select(item => item.Id));
        }
    }

    private static List<string> OrderByDefinition(Kit kit)
    {
        List<Item> order = [];
        while (order.Count < kit.Purchases.Length)
        {
            var left = kit.Purchases.Where(item => !order.Contains(item)).ToList();
            var usable = left.Where(item => !item.IsBarlow || Serves(item, Kit.Of(kit.Problem, [.. order, item]))).ToList();
            order.Add((usable.Count > 0 ? usable : left)
                .Select(item => (item, Kit.Of(kit.Problem, [.. order, item]).Figures))
                .OrderBy(one => Math.Round(one.Figures.LargestStep.Ln, 9)).ThenBy(one => Math.Round(one.Figures.MeanExcess, 9))
                .ThenBy(one => one.item.Price).ThenBy(one => one.item.Id, StringComparer.Ordinal)
                .First().item);
        }

        return [.. order.Select(item => item.Id)];
    }

    /// <summary>Every reticle eyepiece drawn fits every Barlow.</summary>
    private static bool Serves(Item barlow, Kit kit) =>
        kit.Ladders.Any(ladder => ladder.Usable.Any(view => barlow.Equals(view.Barlow))) || kit.Items.Any(item => item.IsReticle);

    private static void AssertOrder(PurchaseProblem problem, ImmutableArray<Item> purchases, params string[] ids)
    {
        var kit = Kit.Of(problem, purchases);
        Assert.Equal(ids, BuyingOrder.Of(kit, AllOf(kit)).Select(item => item.Id));
    }

    private static ImmutableArray<int> AllOf(Kit kit) => [.. Enumerable.Range(0, kit.Ladders.Length)];
}
