namespace Evenstep.Service.Catalogues.Content;

/// <summary>Holds two items equal that differ in nothing but the id.</summary>
internal sealed class ItemLikeness : IEqualityComparer<ItemRequest>
{
    public static readonly ItemLikeness ButForTheId = new();

    public bool Equals(ItemRequest? x, ItemRequest? y) => x is null || y is null
        ? ReferenceEquals(x, y)
        : Bare(x) == Bare(y) && (x.Factors ?? []).SequenceEqual(y.Factors ?? []) && AlikeAttributes(x.Attributes, y.Attributes);

    public int GetHashCode(ItemRequest obj) => Bare(obj).GetHashCode();

    /// <summary>Without what a record compares by reference.</summary>
    private static ItemRequest Bare(ItemRequest item) => item with { Id = null, Factors = null, Attributes = null };

    private static bool AlikeAttributes(IReadOnlyDictionary<string, string>? x, IReadOnlyDictionary<string, string>? y) =>
        (x?.Count ?? 0) == (y?.Count ?? 0) && (x is null || x.All(pair => y!.TryGetValue(pair.Key, out var text) && text == pair.Value));
}
