using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// What decides between sets that are equally good in steps and excess, in this order: what the request prefers, the
/// price, the number of items, and the fixed rule for ties. All of it adds up over the purchases.
/// </summary>
/// <param name="Preference">In units of 1e-7 of a preference score, which is far finer than scores are given; parfocal groups
/// are counted as they are.</param>
/// <param name="Price">Their sum.</param>
/// <param name="Count">Of items.</param>
/// <param name="Ties">The sum of fingerprints.</param>
internal readonly record struct Cost(long Preference, Money Price, int Count, long Ties) : IComparable<Cost>
{
    public static readonly Cost Unknown = new(long.MaxValue, Money.MaxValue, int.MaxValue, long.MaxValue);

    public static Cost operator +(Cost a, Cost b) =>
        new(a.Preference + b.Preference, a.Price + b.Price, a.Count + b.Count, a.Ties + b.Ties);

    public static bool operator <(Cost a, Cost b) => a.CompareTo(b) < 0;

    public static bool operator >(Cost a, Cost b) => a.CompareTo(b) > 0;

    public static bool operator <=(Cost a, Cost b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Cost a, Cost b) => a.CompareTo(b) >= 0;

    public int CompareTo(Cost other) =>
        Preference != other.Preference ? Preference.CompareTo(other.Preference)
        : Price != other.Price ? Price.CompareTo(other.Price)
        : Count != other.Count ? Count.CompareTo(other.Count)
        : Ties.CompareTo(other.Ties);
}
