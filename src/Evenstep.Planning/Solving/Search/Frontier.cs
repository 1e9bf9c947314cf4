using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>A set that no known one beats in both its price and its largest step.</summary>
internal sealed record Outpost(Selection Selection, Cost Cost, double LnStep, double Excess);

/// <summary>The sets known that no other known set beats: the dearer, the smaller their largest step.</summary>
internal sealed class Frontier
{
    private readonly List<Outpost> outposts = [];

    /// <summary>The cheapest first.</summary>
    public IReadOnlyList<Outpost> Outposts => outposts;

    /// <summary>
    /// The widest step, in logarithm, at which a set of this price would still be news: it must beat all that is cheaper, and
    /// may equal what costs the same, for then the fixed rule decides. No price above can be news with a wider step.
    /// </summary>
    public double NewsAt(Money price)
    {
        var last = LastUpTo(price);
        return last < 0 ? double.PositiveInfinity
            : outposts[last].Cost.Price == price ? outposts[last].LnStep
            : NarrowerThan(outposts[last].LnStep);
    }

    /// <summary>The widest step that counts as narrower, where thresholds are kept to within the tolerance.</summary>
    public static double NarrowerThan(double lnStep) => lnStep - (2 * Tolerance.Value);

    /// <summary>Takes a set in, if it is news, and lets go of those that it beats.</summary>
    /// <param name="path">What it buys.</param>
    /// <param name="lnStep">The logarithm of its largest step, or of the step that is enough where that is larger.</param>
    /// <param name="excess">The mean excess that it leaves.</param>
    public void Note(Path path, double lnStep, double excess)
    {
        var cost = path.Cost;
        var place = LastUpTo(cost.Price);
        if (place >= 0 && !IsBeaten(outposts[place], cost, lnStep, excess))
        {
            return;
        }

        var from = place >= 0 && outposts[place].Cost.Price == cost.Price ? place : place + 1;
        var after = from;
        while (after < outposts.Count && (outposts[after].Cost.Price == cost.Price || !Tolerance.Below(outposts[after].LnStep, lnStep)))
        {
            after++;
        }

        outposts.RemoveRange(from, after - from);
        outposts.Insert(from, new Outpost(path.Select(), cost, lnStep, excess));
    }

    /// <summary>Whether one that costs no more is beaten: by a narrower step, or at the same price and step by less mean excess, then by
    /// the fixed rule.</summary>
    private static bool IsBeaten(Outpost known, Cost cost, double lnStep, double excess) =>
        Tolerance.Below(lnStep, known.LnStep)
        || (known.Cost.Price == cost.Price && !Tolerance.Above(lnStep, known.LnStep) && IsChosenOverEqual(known, cost, excess));

    private static bool IsChosenOverEqual(Outpost known, Cost cost, double excess) =>
        Tolerance.Below(excess, known.Excess)
        || (!Tolerance.Above(excess, known.Excess) && (cost.Count, cost.Ties).CompareTo((known.Cost.Count, known.Cost.Ties)) < 0);

    private int LastUpTo(Money price)
    {
        var last = outposts.Count - 1;
        while (last >= 0 && outposts[last].Cost.Price > price)
        {
            last--;
        }

        return last;
    }
}
