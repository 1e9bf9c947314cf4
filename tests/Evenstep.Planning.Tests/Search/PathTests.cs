using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;
using Path = Evenstep.Planning.Solving.Search.Path;

namespace Evenstep.Planning.Tests.Search;

public class PathTests
{
    private const int Problems = 100;

    [Fact]
    public void Down_and_up_again_it_costs_what_its_items_cost_together()
    {
        foreach (var drawn in Drawn.Problems(Problems))
        {
            var pricing = drawn.Ground.Pricing;
            var path = new Path(pricing, drawn.Ground.Musts);
            Stack<Cost> costs = new([pricing.Of(drawn.Ground.Musts)]);
            List<Item> items = [.. drawn.Ground.Musts];
            foreach (var ware in RandomProblems.InAnotherOrder(drawn.Ground.Oculars, new Random(drawn.Seed)).Take(4).Select(offer => offer.Wares[^1]))
            {
                Assert.Equal(costs.Peek(), path.Cost);
                path.Push(ware);
                items.Add(ware.Item);
                costs.Push(pricing.Of(items));
            }

            while (costs.Count > 1)
            {
                Assert.Equal(costs.Pop(), path.Cost);
                path.Pop();
            }

            Assert.Equal(costs.Peek(), path.Cost);
        }
    }

    [Fact]
    public void What_is_selected_is_settled_or_was_pushed_and_comes_in_ordinal_order()
    {
        var pricing = new Pricing(Some.Problem());
        Item[] items = [Some.Eyepiece(20, id: "b"), Some.Eyepiece(10, id: "C"), Some.Eyepiece(5, id: "a"), Some.Barlow(2, id: "d")];
        var path = new Path(pricing, [items[0]]);
        foreach (var item in items[1..])
        {
            path.Push(new Ware(item, pricing.Of(item)));
        }

        path.Pop();
        Assert.Equal(["C", "a", "b"], path.Select().Items.Select(item => item.Id));
    }
}
