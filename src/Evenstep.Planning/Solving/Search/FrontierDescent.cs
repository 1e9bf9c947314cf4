using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// Looks through the sets of a bench, depth first, for those that are news to a frontier. What a node has spent, with the
/// least that must still be spent, says how narrow the steps of any set below must become to be news; so there is always a
/// gap too wide (or a framing open), and only the options that mend it are tried. An option that has been tried is
/// dropped for its later siblings, since every set with it has been looked at.
/// </summary>
internal sealed class FrontierDescent
{
    private const int MostFaultsWeighed = 16;

    private const int NothingChosen = -1;

    private readonly Bench bench;
    private readonly Node[] chain;
    private readonly Frontier frontier;
    private readonly Money knownBelow;
    private readonly Effort effort;
    private readonly Path path;
    private readonly Step enough;

    private FrontierDescent(Bench bench, Node[] chain, Frontier frontier, Money knownBelow, Effort effort, Path path)
    {
        enough = bench.EnoughStep;
        this.bench = bench;
        this.chain = chain;
        this.frontier = frontier;
        this.knownBelow = knownBelow;
        this.effort = effort;
        this.path = path;
    }

    /// <summary>Runs from a first node that has begun.</summary>
    /// <param name="bench">To choose from.</param>
    /// <param name="chain">A node for each depth.</param>
    /// <param name="frontier">What is known, and takes in what is news.</param>
    /// <param name="knownBelow">Of cheaper sets than this the frontier is final.</param>
    /// <param name="effort">Ends the descent where it is spent.</param>
    /// <param name="path">What is settled.</param>
    public static void Run(Bench bench, Node[] chain, Frontier frontier, Money knownBelow, Effort effort, Path path) =>
        new FrontierDescent(bench, chain, frontier, knownBelow, effort, path).Below(0, NothingChosen);

    private void Below(int depth, int chosen)
    {
        var node = chain[depth];
        effort.Spend();
        node.CountLooks(1 + frontier.Outposts.Count);
        var step = Step.Max(enough, node.LargestStep());
        if (node.OpenFramings == 0)
        {
            frontier.Note(path, step, node.Excess);
        }

        if (node.CountLeft == 0 || AimOf(node, step) is not { } aim)
        {
            return;
        }

        if (depth > 0)
        {
            node.Inherit(chain[depth - 1], chosen);
        }

        if (Mending(node, aim) is var count and > 0)
        {
            Try(depth, node.Tried.AsSpan(0, count));
        }
    }

    /// <summary>
    /// The widest step at which a set below a node can be news; null if none can. To get there takes so many purchases, which cost
    /// so much at the least, which makes the aim narrower, and so on.
    /// </summary>
    private Step? AimOf(Node node, Step step)
    {
        // A superset without narrower steps is never news, but a node that lacks a framing is no set that could be beaten by.
        var widest = node.OpenFramings == 0 ? Frontier.NarrowerThan(step) : Step.Unlimited;
        var purchases = 1L;
        while (purchases <= node.CountLeft)
        {
            var aim = Step.Min(widest, NewsAfter(purchases * bench.LeastPriceOfAll));
            var needed = PurchasesNeeded(node, aim);
            if (needed <= purchases)
            {
                return aim;
            }

            purchases = needed;
        }

        return null;
    }

    /// <summary>What is news once so much more is spent.</summary>
    private Step NewsAfter(Money more) => frontier.NewsAt(Money.Max(knownBelow, path.Cost.Price + more));

    private long PurchasesNeeded(Node node, Step aim)
    {
        if (aim.Ln < enough.Ln)
        {
            return long.MaxValue;
        }

        var most = 0L;
        for (var t = 0; t < node.Telescopes.Count; t++)
        {
            var points = node.Telescopes[t].PointsNeeded(aim.WithTolerance.Half);
            var each = bench.MostPointsIn(t);
            most = Math.Max(most, points == 0 ? 0 : each == 0 ? long.MaxValue : (points + each - 1) / each);
        }

        return most;
    }

    private void Try(int depth, Span<Option> options)
    {
        var node = chain[depth];
        node.CountLooks((2 + options.Length) * System.Numerics.BitOperations.Log2((uint)options.Length + 1));
        options.Sort((a, b) => bench.LeastPrice(a.Place).CompareTo(bench.LeastPrice(b.Place)));
        foreach (ref readonly var option in options)
        {
            if (effort.IsSpent)
            {
                return;
            }

            var ware = bench.WaresOf(option.Place, every: false)[0];
            path.Push(ware);
            chain[depth + 1].Become(node, option, ware.Cost.Price, Money.MaxValue);
            Below(depth + 1, option.Place);
            path.Pop();
            node.Drop(option.Place);
        }
    }

    /// <summary>The options that mend the fault which fewest can mend; none, if some fault cannot be mended.</summary>
    private int Mending(Node node, Step aim)
    {
        if (node.OpenFramings != 0)
        {
            var framing = node.OpenFramings & (~node.OpenFramings + 1);
            return node.GatherTried(option => (bench.FramingsMet(option.Place) & framing) != 0);
        }

        while (aim.Ln >= enough.Ln && FewestMend(node, aim.WithTolerance.Half) is { Count: > 0 } gap)
        {
            var narrower = NewsAfter(gap.LeastPrice);
            if (narrower.Ln >= aim.Ln)
            {
                return node.GatherTried(option => bench.Covers(option.Place, gap.Telescope, gap.Place, aim.WithTolerance.Half));
            }

            aim = narrower;
        }

        return 0;
    }

    /// <summary>The gap that fewest options mend, and the least that must be spent to mend the one that is dearest to mend.</summary>
    private Gap FewestMend(Node node, double half)
    {
        Span<double> places = stackalloc double[MostFaultsWeighed];
        var (fewest, dearest) = (new Gap(-1, 0, int.MaxValue, Money.Zero), Money.Zero);
        for (var t = 0; t < node.Telescopes.Count; t++)
        {
            foreach (var place in places[..node.Telescopes[t].Uncovered(half, places)])
            {
                var gap = MendersOf(node, t, place, half);
                dearest = Money.Max(dearest, gap.LeastPrice);
                fewest = gap.Count < fewest.Count ? gap : fewest;
            }
        }

        return fewest with { LeastPrice = dearest };
    }

    private Gap MendersOf(Node node, int telescope, double place, double half)
    {
        var (count, least) = (0, Money.MaxValue);
        node.CountLooks(2 * node.OptionCount);
        for (var i = 0; i < node.OptionCount; i++)
        {
            var ocular = node.Options[i].Place;
            if (bench.Covers(ocular, telescope, place, half))
            {
                (count, least) = (count + 1, Money.Min(least, bench.LeastPrice(ocular)));
            }
        }

        return new Gap(telescope, place, count, count == 0 ? Money.Zero : least);
    }

    /// <summary>A place just beyond which nothing is near enough.</summary>
    /// <param name="Telescope">On whose axis.</param>
    /// <param name="Place">On it.</param>
    /// <param name="Count">Of the options that mend it.</param>
    /// <param name="LeastPrice">What the cheapest of them costs.</param>
    private readonly record struct Gap(int Telescope, double Place, int Count, Money LeastPrice);
}
