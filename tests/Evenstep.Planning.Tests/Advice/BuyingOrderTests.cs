using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

public sealed class BuyingOrderTests
{
    private const int FirstSeed = 510_000;
    private const int Problems = 400;

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

    [Fact]
    public void It_is_what_the_definition_says_by_the_exhaustive_solvers_figures()
    {
        var several = 0;
        foreach (var planned in Planned.Solvable(FirstSeed, Problems))
        {
            Assert.Equal(OrderByDefinition(planned), Explanation.BuyingOrder(planned.Problem, planned.Plan.Purchases).Select(item => item.Id));
            several += planned.Ids.Length > 1 ? 1 : 0;
        }

        Assert.True(several > Problems / 4, $"only {several} plans with several purchases");
    }

    private static List<string> OrderByDefinition(Planned planned)
    {
        List<string> order = [];
        while (order.Count < planned.Ids.Length)
        {
            List<(string Id, OraclePlan Kit)> next = [.. planned.Ids.Except(order).Select(id => (id, Exhaustive.Assess(planned.Asked, [.. order, id])))];
            KeepLeast(next, one => one.Kit.Figures.Kit.LnLargestStep);
            KeepLeast(next, one => one.Kit.Figures.Kit.MeanExcess);
            KeepLeast(next, one => (double)one.Kit.Price);
            order.Add(next.Select(one => one.Id).Min(StringComparer.Ordinal)!);
        }

        return order;
    }

    private static void KeepLeast<T>(List<T> all, Func<T, double> figure)
    {
        var least = all.Min(figure);
        all.RemoveAll(one => OracleTolerance.Above(figure(one), least));
    }

    private static void AssertOrder(PurchaseProblem problem, ImmutableArray<Item> purchases, params string[] ids) =>
        Assert.Equal(ids, Explanation.BuyingOrder(problem, purchases).Select(item => item.Id));
}
