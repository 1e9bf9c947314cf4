using System.Text;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// The fixed rule for sets that are equal in everything that counts: the least sum of the items' fingerprints is chosen.
/// A fingerprint depends on nothing but the item's id, so that neither the order of the catalogue nor what else is in it
/// decides.
/// </summary>
internal static class Ties
{
    /// <summary>One more than the greatest sum of fingerprints of a set of purchases.</summary>
    public const long SumLimit = (long)(1 << FingerprintBits) * (Limits.MostPurchases + 1);

    private const int FingerprintBits = 20;

    /// <summary>Of a usual id; a longer one takes memory.</summary>
    private const int MostOctets = 256;

    public static bool IsFirst(Item a, Item b)
    {
        var (first, second) = (Fingerprint(a), Fingerprint(b));
        return first != second ? first < second : string.CompareOrdinal(a.Id, b.Id) < 0;
    }

    /// <summary>The FNV-1a hash of the id's UTF-8 bytes (Fowler, Noll and Vo, RFC 9923), folded to 20 bits.</summary>
    public static long Fingerprint(Item item)
    {
        var hash = 2166136261u;
        Span<byte> octets = stackalloc byte[MostOctets];
        foreach (var octet in Encoding.UTF8.TryGetBytes(item.Id, octets, out var count) ? octets[..count] : Encoding.UTF8.GetBytes(item.Id))
        {
            hash = unchecked((hash ^ octet) * 16777619u);
        }

        return (hash >> FingerprintBits) ^ (hash & ((1u << FingerprintBits) - 1));
    }
}
