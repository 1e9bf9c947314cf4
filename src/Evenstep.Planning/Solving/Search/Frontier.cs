using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>A set that no known one beats in both its price and its largest step.</summary>
internal sealed record Outpost(Selection Selection, Cost Cost, Step Step, double Excess);

/// <summary>The sets known that no other known set beats: the dearer, the smaller their largest step.</summary>
internal sealed class Frontier
{
    private readonly List<Outpost> outposts = [];

    /// <summary>The cheapest first.</summary>
    public IReadOnlyList<Outpost> Outposts => outposts;

    /// <summary>
    /// The widest step at which a set of this price would still be news: it must beat all that is cheaper, and
    /// may equal what costs the same, for then the fixed rule decides. No price above can be news with a wider step.
    /// </summary>
    public Step NewsAt(Money price)
    {
        var last = LastUpTo(price);
        return last < 0 ? Step.Unlimited
            : outposts[last].Cost.Price == price ? outposts[last].Step
            : NarrowerThan(outposts[last].Step);
    }

    /// <summary>The widest step that counts as narrower, where thresholds are kept to within the tolerance.</summary>
    public static Step NarrowerThan(Step step) => new(step.Ln - (2 * Tolerance.Value));

    /// <summary>Takes a set in, if it is news, and lets go of those that it beats.</summary>
    /// <param name="path">What it buys.</param>
    /// <param name="step">Its largest step, or of the step that is enough where that is larger.</param>
    /// <param name="excess">The mean excess that it leaves.</param>
    public void Note(Path path, Step step, double excess)
    {
        var cost = path.Cost;
        var place = LastUpTo(cost.Price);
        if (place >= 0 && !IsBeaten(outposts[place], cost, step, excess))
        {
            return;
        }

        var from = place >= 0 && outposts[place].Cost.Price == cost.Price ? place : place + 1;
        var after = from;
        while (after < outposts.Count && (outposts[after].Cost.Price == cost.Price || !outposts[after].Step.Below(step)))
        {
            after++;
        }

        outposts.RemoveRange(from, after - from);
        outposts.Insert(from, new Outpost(path.Select(), cost, step, excess));
    }

    /// <summary>Whether one that costs no more is beaten: by a narrower step, or at the same price and step by less mean excess, then by
    /// the fixed rule.</summary>
    private static bool IsBeaten(Outpost known, Cost cost, Step step, double excess) =>
        step.Below(known.Step)
        || (known.Cost.Price == cost.Price && !step.Above(known.Step) && IsChosenOverEqual(known, cost, excess));

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
