using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>An item that may be bought, with what buying it costs.</summary>
internal sealed record Ware(Item Item, Cost Cost);

/// <summary>Alike wares, of which at most one is worth buying. The cheapest comes first.</summary>
internal sealed record Offer(ImmutableArray<Ware> Wares)
{
    public Item Item => Wares[0].Item;

    /// <summary>The least preference score, in units, of any of them.</summary>
    public long LeastPreference => Wares.Min(ware => ware.Cost.Preference);

    /// <summary>
    /// Of two alike wares a set never needs both, for without one of them it shows the same, costs no more and is one item fewer; and of the two
    /// it never needs the one that costs no less and is preferred no more.
    /// </summary>
    public static ImmutableArray<Offer> Among(PurchaseProblem problem, Pricing pricing, IReadOnlyCollection<Item> items)
    {
        Dictionary<Likeness, int> places = new(items.Count);
        List<Ware> first = new(items.Count);
        Dictionary<int, List<Ware>> alike = [];
        foreach (var item in items)
        {
            var (ware, likeness) = (new Ware(item, pricing.Of(item)), Likeness.Of(problem, item));
            if (places.TryAdd(likeness, first.Count))
            {
                first.Add(ware);
                continue;
            }

            // Most items are like no other, and need no list.
            var place = places[likeness];
            if (!alike.TryGetValue(place, out var wares))
            {
                alike[place] = wares = [first[place]];
            }

            wares.Add(ware);
        }

        return [.. first.Select((ware, place) => new Offer(alike.TryGetValue(place, out var wares) ? Unbeaten(pricing, wares) : [ware]))];
    }

    private static ImmutableArray<Ware> Unbeaten(Pricing pricing, IEnumerable<Ware> alike)
    {
        List<Ware> kept = [];
        foreach (var ware in alike.OrderBy(ware => ware.Cost.Price).ThenBy(ware => ware.Cost))
        {
            if (!kept.Exists(other => pricing.IsNeverWorse(other, ware)))
            {
                kept.Add(ware);
            }
        }

        return [.. kept];
    }
}
