using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Evenstep.Planning.Purchases;

/// <summary>What a shop sells, in ordinal order of ids, whatever order it was listed in. Made once for each version of a
/// catalogue, and shared by all problems that choose from it.</summary>
[CollectionBuilder(typeof(Assortment), nameof(Of))]
public sealed class Assortment : IReadOnlyList<Item>
{
    private readonly Lazy<ImmutableArray<Item>> byPrice;

    private Assortment(ImmutableArray<Item> items)
    {
        Items = items;
        byPrice = new(() => [.. items.OrderBy(item => item.ExactPrice)]);
    }

    public ImmutableArray<Item> Items { get; }

    /// <summary>The cheap before the dear; those of one price in ordinal order of ids.</summary>
    public ImmutableArray<Item> ByPrice => byPrice.Value;

    public int Count => Items.Length;

    public Item this[int index] => Items[index];

    public static Assortment Of(ReadOnlySpan<Item> items) => new([.. items.ToArray().OrderBy(item => item.Id, StringComparer.Ordinal)]);

    public IEnumerator<Item> GetEnumerator() => ((IEnumerable<Item>)Items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
