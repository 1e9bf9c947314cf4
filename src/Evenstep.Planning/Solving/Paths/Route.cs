using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Paths;

/// <summary>A set that arrives, in the best order to buy it in.</summary>
/// <param name="Order">The purchases.</param>
/// <param name="GreatestLoss">Over all of them.</param>
internal sealed record Route(ImmutableArray<Choice> Order, double GreatestLoss)
{
    public Money TotalPrice { get; } = Order.Sum(choice => choice.Price);

    /// <summary>The cheaper; of equals the one with the least greatest loss, then the one whose first purchase is cheaper, then
    /// the one of fewer items, then that with the least sum of fingerprints, then the first in the order of ids.</summary>
    public bool IsBetterThan(Route other)
    {
        if (TotalPrice != other.TotalPrice)
        {
            return TotalPrice < other.TotalPrice;
        }

        return Math.Abs(GreatestLoss - other.GreatestLoss) > Optics.Tolerance.Value
            ? GreatestLoss < other.GreatestLoss
            : Rank.CompareTo(other.Rank) < 0;
    }

    private (Money FirstPrice, int Count, long Ties, string Ids) Rank => (
        Order.IsEmpty ? Money.Zero : Order[0].Price,
        Order.Length,
        Order.Sum(choice => Ties.Fingerprint(choice.Item)),
        string.Join('\0', Order.Select(choice => choice.Place.ToString("D6", System.Globalization.CultureInfo.InvariantCulture))));
}
