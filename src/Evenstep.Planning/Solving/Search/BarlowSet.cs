using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// One way to settle which Barlows are bought. With the Barlows settled no view depends on two choices any more, so the
/// search takes the sets one by one.
/// </summary>
/// <param name="Bought">Those that must be bought among them.</param>
/// <param name="Cost">Of what is settled by it: these, and all else that must be bought.</param>
/// <param name="Key">Of those that need not be bought; no other set has it.</param>
internal sealed record BarlowSet(ImmutableArray<Item> Bought, Cost Cost, ulong Key)
{
    private const int BitsOfPlace = 16;
    private const long StepsOfSet = 1_500;
    private const long BytesOfSet = 160;

    /// <summary>Every set within the limits that holds what must be bought, the cheap before the dear.</summary>
    public static IEnumerable<BarlowSet> All(Groundwork ground) => InOrder(ground, _ => 0);

    /// <summary>The same, those first whose Barlows have the most factors; of as many the cheap before the dear.</summary>
    public static IEnumerable<BarlowSet> ByPowers(Groundwork ground) => InOrder(ground, ware => -((Barlow)ware.Item.Optic).Factors.Length);

    /// <summary>
    /// Made one after another as they are asked for, for there may be billions. The wares are in order; from the first so many of them every
    /// choice of so many is reached by moving one of its wares up by one place, again and again, which never makes it come earlier. So the
    /// choices that come next are always among those reached from the choices that have come, and each is reached in one way: the last ware moves
    /// first, then the one before it.
    /// </summary>
    private static IEnumerable<BarlowSet> InOrder(Groundwork ground, Func<Ware, int> weight)
    {
        Item[] musts = [.. ground.Musts.Where(item => item.IsBarlow)];
        var most = Math.Min(BarlowCountRule.Left(ground.Problem, musts.Length), PurchaseCountRule.Left(ground.Problem, ground.Musts.Length));
        var money = BudgetRule.Most(ground.Problem) - ground.Musts.Sum(item => item.ExactPrice);
        if (most < 0 || money < Money.Zero)
        {
            yield break;
        }

        Listed[] wares =
        [
            .. ground.Barlows.SelectMany((offer, place) => offer.Wares.Select(ware => (offer: place, ware)))
                .Select((one, place) => new Listed(one.ware, one.offer, place, weight(one.ware)))
                .Where(one => one.Ware.Cost.Price <= money).OrderBy(one => one.Rank),
        ];
        var settled = ground.Pricing.Of(ground.Musts);
        var open = new PriorityQueue<Pick, Rank>();
        for (var size = 0; size <= Math.Min(most, wares.Length); size++)
        {
            Enqueue(new Pick([.. Enumerable.Range(0, size)], size - 1));
        }

        try
        {
            while (open.TryDequeue(out var pick, out var rank))
            {
                ground.Budget.Release(BytesOfSet);
                ground.Steps.Count(StepsOfSet);
                if (rank.Cost.Price <= money && IsOfDifferentOffers(pick))
                {
                    yield return SetOf(pick, rank);
                }

                foreach (var next in pick.Nexts(wares.Length))
                {
                    Enqueue(next);
                }
            }
        }
        finally
        {
            ground.Budget.Release(BytesOfSet * open.Count);
        }

        void Enqueue(Pick pick)
        {
            ground.Budget.Hold(BytesOfSet);
            open.Enqueue(pick, pick.Places.Aggregate(default(Rank), (sum, place) => sum + wares[place].Rank));
        }

        bool IsOfDifferentOffers(Pick pick) =>
            pick.Places.Length < 2 || pick.Places.Select(place => wares[place].Offer).Distinct().Count() == pick.Places.Length;

        BarlowSet SetOf(Pick pick, Rank rank)
        {
            Listed[] chosen = [.. pick.Places.Select(place => wares[place]).OrderBy(one => one.Place)];
            return new BarlowSet(
                [.. musts, .. chosen.Select(one => one.Ware.Item)],
                settled + rank.Cost,
                chosen.Aggregate(0ul, (key, one) => (key << BitsOfPlace) | (uint)(one.Place + 1)));
        }
    }

    /// <summary>What says which set comes first.</summary>
    private readonly record struct Rank(int Weight, Cost Cost) : IComparable<Rank>
    {
        public static Rank operator +(Rank a, Rank b) => new(a.Weight + b.Weight, a.Cost + b.Cost);

        public int CompareTo(Rank other) => Weight != other.Weight ? Weight.CompareTo(other.Weight) : Cost.CompareTo(other.Cost);
    }

    /// <summary>A Barlow for sale, its offer, its place among all, and its weight in the order.</summary>
    private sealed record Listed(Ware Ware, int Offer, int Place, int Weight)
    {
        public Rank Rank => new(Weight, Ware.Cost);
    }

    /// <summary>A choice of wares by their places in order, the lowest first, and which of them moved last.</summary>
    private sealed record Pick(int[] Places, int Moved)
    {
        /// <summary>Those that are reached from this one: the same moves on, or the one before it begins to move.</summary>
        public IEnumerable<Pick> Nexts(int count)
        {
            if (Moved < 0)
            {
                yield break;
            }

            if (Places[Moved] + 1 < (Moved + 1 < Places.Length ? Places[Moved + 1] : count))
            {
                yield return After(Moved);
            }

            if (Moved > 0 && Places[Moved] > Moved)
            {
                yield return After(Moved - 1);
            }
        }

        private Pick After(int moved)
        {
            int[] places = [.. Places];
            places[moved]++;
            return new Pick(places, moved);
        }
    }
}
