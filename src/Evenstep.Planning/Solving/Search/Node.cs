namespace Evenstep.Planning.Solving.Search;

/// <summary>An ocular that may still be chosen below a node.</summary>
/// <param name="Place">Among the offered oculars.</param>
/// <param name="Overlaps">What choosing it would bring about with all that is chosen or shown.</param>
/// <param name="Gain">No more than this would be taken off the mean excess by it: it was so much, or less, when last worked
/// out, and the more is chosen the less another adds.</param>
internal record struct Option(int Place, int Overlaps, double Gain);

/// <summary>A set being built: what it shows, and what may still be chosen. One a depth, used again and again.</summary>
internal sealed class Node
{
    private readonly Bench bench;
    private readonly Islands[] islands;

    private Node(Bench bench, Shore[] shores, int capacity)
    {
        this.bench = bench;
        islands = [.. shores.Select(shore => new Islands(shore, capacity))];
        Options = new Option[bench.Sights.Length];
    }

    /// <summary>The oculars that may still be chosen, up to <see cref="OptionCount"/>.</summary>
    public Option[] Options { get; }

    public int OptionCount { get; private set; }

    public int CountLeft { get; private set; }

    public long CentsLeft { get; private set; }

    public int OverlapsLeft { get; private set; }

    public uint OpenFramings { get; private set; }

    public IReadOnlyList<Islands> Telescopes => islands;

    public double Excess
    {
        get
        {
            var sum = 0.0;
            foreach (var one in islands)
            {
                sum += one.Excess;
            }

            return sum;
        }
    }

    /// <summary>A node for each depth. The first must begin before it is used.</summary>
    public static Node[] Chain(Groundwork ground, Bench bench)
    {
        var problem = ground.Problem;
        Shore[] shores = [.. problem.Telescopes.Select(telescope =>
            new Shore(telescope.Axis.Length, problem.EnoughMismatch, 1 / (telescope.Axis.Length * problem.Telescopes.Length)))];
        var most = bench.Sights.Select(sights => sights.Length).DefaultIfEmpty(0).Max();
        var capacity = bench.Shown.Length + (most * Math.Max(0, bench.CountLeft)) + 1;
        return [.. Enumerable.Range(0, Math.Max(0, bench.CountLeft) + 1).Select(_ => new Node(bench, shores, capacity))];
    }

    /// <summary>The most that so many further choices can take off the excess.</summary>
    public double BestGains(int choices)
    {
        Span<double> best = stackalloc double[choices];
        for (var i = 0; i < OptionCount; i++)
        {
            var gain = Options[i].Gain;
            for (var k = 0; k < choices; k++)
            {
                if (gain > best[k])
                {
                    (gain, best[k]) = (best[k], gain);
                }
            }
        }

        var sum = 0.0;
        foreach (var gain in best)
        {
            sum += gain;
        }

        return sum;
    }

    /// <summary>No so many options cost less.</summary>
    public Cost LeastCostOfOptions(int count)
    {
        var (preference, cents) = (long.MaxValue, long.MaxValue);
        for (var i = 0; i < OptionCount; i++)
        {
            preference = Math.Min(preference, bench.LeastPreference(Options[i].Place));
            cents = Math.Min(cents, bench.LeastCents(Options[i].Place));
        }

        return OptionCount == 0 ? default : new Cost(preference * count, cents * count, count, 0);
    }

    /// <summary>Works the gains of all options out anew.</summary>
    public void RefreshGains()
    {
        for (var i = 0; i < OptionCount; i++)
        {
            Options[i].Gain = GainOf(Options[i].Place);
        }
    }

    private double GainOf(int place)
    {
        var gain = 0.0;
        foreach (var sight in bench.Sights[place])
        {
            gain += islands[sight.Telescope].GainOf(sight.Reach);
        }

        return gain;
    }

    public double LnLargestStep()
    {
        var widest = 0.0;
        foreach (var one in islands)
        {
            widest = Math.Max(widest, one.LnLargestStep());
        }

        return widest;
    }

    /// <summary>Becomes its parent with one option chosen; options that no limit allows any more fall away.</summary>
    public void Become(Node parent, Option chosen, long cents)
    {
        for (var t = 0; t < islands.Length; t++)
        {
            islands[t].CopyFrom(parent.islands[t]);
        }

        Show(bench.Sights[chosen.Place]);
        CountLeft = parent.CountLeft - 1;
        CentsLeft = parent.CentsLeft - cents;
        OverlapsLeft = parent.OverlapsLeft - chosen.Overlaps;
        OpenFramings = parent.OpenFramings & ~bench.FramingsMet(chosen.Place);
        OptionCount = 0;
        for (var i = 0; CountLeft > 0 && i < parent.OptionCount; i++)
        {
            Keep(parent.Options[i], chosen.Place);
        }
    }

    /// <summary>No set below this node holds the option any more: all that do have been looked at.</summary>
    public void Drop(int place)
    {
        for (var i = 0; i < OptionCount; i++)
        {
            if (Options[i].Place == place)
            {
                Options[i] = Options[--OptionCount];
                return;
            }
        }
    }

    /// <summary>Nothing is chosen yet.</summary>
    /// <param name="extraCents">Spent beyond what the bench reckons with.</param>
    public void Begin(long extraCents)
    {
        foreach (var one in islands)
        {
            one.Clear();
        }

        Show(bench.Shown.AsSpan());
        (CountLeft, CentsLeft, OverlapsLeft, OpenFramings) = (bench.CountLeft, bench.CentsLeft - extraCents, bench.OverlapsLeft, bench.OpenFramings);
        OptionCount = 0;
        for (var place = 0; place < bench.Sights.Length; place++)
        {
            if (bench.OverlapsOf(place) <= OverlapsLeft && bench.LeastCents(place) <= CentsLeft)
            {
                Options[OptionCount++] = new Option(place, bench.OverlapsOf(place), GainOf(place));
            }
        }
    }

    private void Keep(Option option, int chosen)
    {
        if (option.Place == chosen || bench.LeastCents(option.Place) > CentsLeft || option.Overlaps > OverlapsLeft)
        {
            return;
        }

        option.Overlaps += bench.OverlapsBetween(chosen, option.Place);
        if (option.Overlaps <= OverlapsLeft)
        {
            Options[OptionCount++] = option;
        }
    }

    private void Show(ReadOnlySpan<Sight> sights)
    {
        foreach (var sight in sights)
        {
            islands[sight.Telescope].Add(sight.Reach);
        }
    }
}
