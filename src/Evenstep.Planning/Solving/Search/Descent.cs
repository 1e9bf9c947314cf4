using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// Looks through the sets of a bench, depth first. While a framing is open or a gap is too wide, some purchase must mend
/// it: only the options that would are tried, for the fault that fewest can mend. Once nothing is amiss, whatever may
/// still help is tried. An option that has been tried is dropped for its later siblings, since every set with it has been
/// looked at. So no set is met twice, and a set is left out only if a smaller one within it shows as much.
/// </summary>
internal sealed class Descent
{
    /// <summary>Of more faults than this the rest is left for later.</summary>
    private const int MostFaultsWeighed = 16;

    private const int NothingChosen = -1;

    private readonly Bench bench;
    private readonly Node[] chain;
    private readonly Goal goal;
    private readonly Effort effort;
    private readonly Path path;
    private readonly double half;
    private readonly List<(int Telescope, double Place)> faults = [];

    private Descent(Bench bench, Node[] chain, Step largestStep, Goal goal, Effort effort, Path path)
    {
        this.bench = bench;
        this.chain = chain;
        this.goal = goal;
        this.effort = effort;
        this.path = path;
        half = largestStep.WithTolerance.Half;
    }

    /// <summary>Runs from a first node that has begun.</summary>
    public static void Run(Bench bench, Node[] chain, Step largestStep, Goal goal, Effort effort, Path path) =>
        new Descent(bench, chain, largestStep, goal, effort, path).Below(0, NothingChosen);

    /// <param name="depth">How many oculars are chosen.</param>
    /// <param name="chosen">The last of them.</param>
    private void Below(int depth, int chosen)
    {
        var node = chain[depth];
        effort.Spend();
        if (IsTooFarFromCovered(node))
        {
            return;
        }

        if (depth > 0)
        {
            node.Inherit(chain[depth - 1], chosen);
        }

        if (goal.IsHopeless(node, path))
        {
            return;
        }

        var count = Mending(node);
        if (count < 0)
        {
            if (!goal.Note(node, path) || node.CountLeft == 0)
            {
                return;
            }

            count = node.GatherTried(goal.MayHelp(node));
        }

        if (node.CountLeft > 0)
        {
            Try(depth, node.Tried.AsSpan(0, count));
        }
    }

    /// <summary>Tries options, which are a copy: what the node itself offers shrinks meanwhile, and that is what its children see.</summary>
    private void Try(int depth, Span<Option> options)
    {
        var node = chain[depth];
        if (goal.OrderMatters(node.CountLeft))
        {
            node.CountLooks(options.Length * System.Numerics.BitOperations.Log2((uint)options.Length + 1));
            options.Sort(goal.FirstTried);
        }

        var prospects = node.ProspectsOf(node.CountLeft - 1);
        foreach (var option in options)
        {
            foreach (var ware in bench.WaresOf(option.Place, goal.WantsEveryWare))
            {
                if (goal.IsReached || effort.IsSpent)
                {
                    return;
                }

                if (ware.Cost.Price <= node.MoneyLeft && goal.IsWorthTrying(prospects, option, path.Cost + ware.Cost))
                {
                    path.Push(ware);
                    chain[depth + 1].Become(node, option, ware.Cost.Price, goal.MoneyWorthSpending(path.Cost));
                    Below(depth + 1, option.Place);
                    path.Pop();
                }
            }

            node.Drop(option.Place);
        }
    }

    /// <summary>The options that mend the fault which fewest can mend; a negative count if there is no fault.</summary>
    private int Mending(Node node)
    {
        if (node.CountLeft == 1)
        {
            return MendingAll(node);
        }

        if (node.OpenFramings != 0)
        {
            var framing = node.OpenFramings & (~node.OpenFramings + 1);
            return node.GatherTried(option => (bench.FramingsMet(option.Place) & framing) != 0);
        }

        var (telescope, place, fewest) = (-1, 0.0, int.MaxValue);
        Span<double> places = stackalloc double[MostFaultsWeighed];
        for (var t = 0; t < node.Telescopes.Count; t++)
        {
            foreach (var uncovered in places[..node.Telescopes[t].Uncovered(half, places)])
            {
                var count = 0;
                node.CountLooks(2 * node.OptionCount);
                for (var i = 0; i < node.OptionCount && count < fewest; i++)
                {
                    count += bench.Covers(node.Options[i].Place, t, uncovered, half) ? 1 : 0;
                }

                (telescope, place, fewest) = count < fewest ? (t, uncovered, count) : (telescope, place, fewest);
            }
        }

        return telescope < 0 ? -1 : node.GatherTried(option => bench.Covers(option.Place, telescope, place, half));
    }

    /// <summary>The last purchase must mend all that is amiss.</summary>
    private int MendingAll(Node node)
    {
        faults.Clear();
        node.CountLooks(node.OptionCount);
        Span<double> places = stackalloc double[MostFaultsWeighed];
        for (var t = 0; t < node.Telescopes.Count; t++)
        {
            foreach (var uncovered in places[..node.Telescopes[t].Uncovered(half, places)])
            {
                faults.Add((t, uncovered));
            }
        }

        return faults.Count == 0 && node.OpenFramings == 0 ? -1 : node.GatherTried(option => MendsAll(node, option.Place));
    }

    private bool MendsAll(Node node, int ocular)
    {
        if ((node.OpenFramings & ~bench.FramingsMet(ocular)) != 0)
        {
            return false;
        }

        foreach (var (telescope, place) in faults)
        {
            if (!bench.Covers(ocular, telescope, place, half))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether a telescope needs more points to be covered than all further purchases together can give.</summary>
    private bool IsTooFarFromCovered(Node node)
    {
        for (var t = 0; t < node.Telescopes.Count; t++)
        {
            if (node.Telescopes[t].PointsNeeded(half) > node.CountLeft * bench.MostPointsIn(t))
            {
                return true;
            }
        }

        return false;
    }
}
