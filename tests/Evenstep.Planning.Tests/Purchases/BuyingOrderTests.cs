using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class BuyingOrderTests
{
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

    [Fact]
    public void A_tie_goes_to_the_least_mean_excess()
    {
        // Nothing fits the second telescope, so that its whole axis stays the largest step whatever is bought.
        var small = Some.InUse(Some.Telescope(focuser: Barrel.Inch0965), 25, 200);
        var problem = Some.Problem() with { Telescopes = [From25To200, small] };
        AssertOrder(problem, [Some.Eyepiece(5, price: 10), Some.Eyepiece(10, price: 90)], "eyepiece-10", "eyepiece-5");
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

    private static void AssertOrder(PurchaseProblem problem, ImmutableArray<Item> purchases, params string[] ids) =>
        Assert.Equal(ids, Explanation.BuyingOrder(problem, purchases).Select(item => item.Id));
}
