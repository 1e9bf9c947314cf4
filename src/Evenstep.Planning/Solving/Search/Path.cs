using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>What a set buys.</summary>
internal sealed record Selection(ImmutableArray<Item> Items);

/// <summary>The purchases from the root of a descent down to where it is.</summary>
internal sealed class Path
{
    private readonly Pricing pricing;
    private readonly List<Item> items;
    private readonly Stack<Cost> costs = [];

    public Path(Pricing pricing, IEnumerable<Item> settled)
    {
        this.pricing = pricing;
        items = [.. settled];
        costs.Push(pricing.Of(items));
    }

    public Cost Cost => costs.Peek();

    public void Push(Ware ware)
    {
        items.Add(ware.Item);
        costs.Push(pricing.CountsParfocalGroups ? pricing.Of(items) : Cost + ware.Cost);
    }

    public void Pop()
    {
        items.RemoveAt(items.Count - 1);
        costs.Pop();
    }

    public Selection Select() => new([.. items.OrderBy(item => item.Id, StringComparer.Ordinal)]);
}
