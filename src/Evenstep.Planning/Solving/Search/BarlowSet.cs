using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// One way to settle which Barlows are bought. With the Barlows settled no view depends on two choices any more, so the
/// search takes the sets one by one.
/// </summary>
/// <param name="Bought">Those that must be bought among them.</param>
/// <param name="Cost">Of what is settled by it: these, and all else that must be bought.</param>
internal sealed record BarlowSet(ImmutableArray<Item> Bought, Cost Cost)
{
    /// <summary>Every set within the limits that holds what must be bought, the cheap before the dear.</summary>
    public static IEnumerable<BarlowSet> All(Groundwork ground)
    {
        var limits = ground.Problem.Limits;
        Item[] musts = [.. ground.Musts.Where(item => item.IsBarlow)];
        var most = Math.Min(limits.MaxBarlows - musts.Length, limits.MaxPurchases - ground.Musts.Length);
        var budget = limits.Budget - ground.Musts.Sum(item => item.Price);
        return most < 0 ? [] : Extend([], 0, most, budget).Select(set => new BarlowSet([.. musts, .. set], ground.Pricing.Of([.. ground.Musts, .. set])))
            .OrderBy(set => set.Cost);

        IEnumerable<ImmutableArray<Item>> Extend(ImmutableArray<Item> set, int from, int left, decimal money)
        {
            if (money < 0)
            {
                yield break;
            }

            yield return set;
            for (var i = from; i < ground.Barlows.Length && left > 0; i++)
            {
                foreach (var ware in ground.Barlows[i].Wares)
                {
                    foreach (var larger in Extend(set.Add(ware.Item), i + 1, left - 1, money - ware.Item.Price))
                    {
                        yield return larger;
                    }
                }
            }
        }
    }
}
