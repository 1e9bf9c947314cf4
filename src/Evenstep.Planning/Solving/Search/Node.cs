using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>A set being built: what it shows, and what may still be chosen. One a depth, used again and again.</summary>
internal sealed partial class Node
{
    /// <summary>Of becoming a node, and of looking at one of its options.</summary>
    private const long StepsOfNode = 250;
    private const long StepsOfOption = 4;

    /// <summary>Of working out what a view takes off the excess.</summary>
    private const long StepsOfGain = 20;

    private readonly StepCounter steps;
    private readonly Islands[] islands;
    private readonly int[] indexOf;
    private Bench bench = null!;
    private Cover? cover;

    private Node(Shore[] shores, Groundwork ground)
    {
        steps = ground.Steps;
        islands = [.. shores.Select(shore => new Islands(shore))];
        Options = ground.Lend<Option>(ground.Oculars.Length);
        Tried = ground.Lend<Option>(ground.Oculars.Length);
        indexOf = ground.Lend<int>(ground.Oculars.Length);
    }

    /// <summary>The oculars that may still be chosen, up to <see cref="OptionCount"/>.</summary>
    public Option[] Options { get; }

    public int OptionCount { get; private set; }

    /// <summary>Room for the options that a descent tries here.</summary>
    public Option[] Tried { get; }

    public int CountLeft { get; private set; }

    public Money MoneyLeft { get; private set; }

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

    /// <summary>The measure of quality of what is shown; 0 where it is not asked for.</summary>
    public double Quality => cover?.Quality ?? 0;

    /// <summary>A node for each depth. The first must begin before it is used.</summary>
    public static Node[] Chain(Groundwork ground)
    {
        var shores = Shore.All(ground.Problem, ground.Candidacy.Telescopes);
        return [.. Enumerable.Range(0, ground.Problem.Limits.MaxPurchases + 1).Select(_ => new Node(shores, ground))];
    }

    /// <summary>From now on quality is asked for as well; the node must begin anew before it is used.</summary>
    public void Measure(QualityMeasure measure) => cover = new Cover(measure, islands.Length);

    public Step LargestStep()
    {
        var widest = default(Step);
        foreach (var one in islands)
        {
            widest = Step.Max(widest, one.LargestStep());
        }

        return widest;
    }

    /// <summary>Becomes its parent with one option chosen. What may still be chosen is looked for later, by <see cref="Inherit"/>.</summary>
    /// <param name="parent">The node above.</param>
    /// <param name="chosen">One of its options.</param>
    /// <param name="price">What is paid for it.</param>
    /// <param name="moneyWorthSpending">Spending more than this after it is of no use.</param>
    public void Become(Node parent, Option chosen, Money price, Money moneyWorthSpending)
    {
        steps.Count(StepsOfNode);
        bench = parent.bench;
        for (var t = 0; t < islands.Length; t++)
        {
            islands[t].CopyFrom(parent.islands[t]);
        }

        cover?.CopyFrom(parent.cover!);

        Show(bench.SightsOf(chosen.Place));
        CountLeft = parent.CountLeft - 1;
        MoneyLeft = Money.Min(parent.MoneyLeft - price, moneyWorthSpending);
        OverlapsLeft = parent.OverlapsLeft - chosen.Overlaps;
        OpenFramings = parent.OpenFramings & ~bench.FramingsMet(chosen.Place);
        OptionCount = 0;
    }

    /// <summary>Takes over the options of its parent, but for the one chosen and those that no limit allows any more.</summary>
    public void Inherit(Node parent, int chosen)
    {
        if (CountLeft == 0)
        {
            return;
        }

        (gainsAreFresh, qualitiesAreFresh) = (false, false);
        steps.Count(StepsOfOption * parent.OptionCount);
        InheritAffordable(parent, chosen);
        var (count, overlaps) = (OptionCount, bench.OverlapsWith(chosen, OptionCount));
        OptionCount = 0;
        foreach (var option in Options.AsSpan(0, count))
        {
            var all = option.Overlaps + overlaps.With(option.Place);
            if (all <= OverlapsLeft)
            {
                Add(option with { Overlaps = all });
            }
        }
    }

    /// <summary>Often little can still be afforded: that is seen sooner than what overlaps.</summary>
    private void InheritAffordable(Node parent, int chosen)
    {
        foreach (ref readonly var option in parent.Options.AsSpan(0, parent.OptionCount))
        {
            if (bench.LeastPrice(option.Place) <= MoneyLeft && option.Place != chosen)
            {
                Options[OptionCount++] = option;
            }
        }
    }

    /// <summary>Copies the options that are wanted to <see cref="Tried"/>, and says how many they are.</summary>
    public int GatherTried(Func<Option, bool> isWanted)
    {
        var count = 0;
        steps.Count(2 * StepsOfOption * OptionCount);
        foreach (ref readonly var option in Options.AsSpan(0, OptionCount))
        {
            if (isWanted(option))
            {
                Tried[count++] = option;
            }
        }

        return count;
    }

    /// <summary>No set below this node holds the option any more: all that do have been looked at.</summary>
    public void Drop(int place)
    {
        var index = indexOf[place];
        var last = Options[--OptionCount];
        Options[index] = last;
        indexOf[last.Place] = index;
    }

    /// <summary>Nothing is chosen yet.</summary>
    /// <param name="on">The bench to choose from.</param>
    /// <param name="extraPrice">Spent beyond what the bench reckons with.</param>
    public void Begin(Bench on, Money extraPrice)
    {
        bench = on;
        foreach (var one in islands)
        {
            one.Clear();
        }

        cover?.Clear();
        Show(bench.Shown.AsSpan());
        (CountLeft, MoneyLeft, OverlapsLeft, OpenFramings) = (bench.CountLeft, bench.MoneyLeft - extraPrice, bench.OverlapsLeft, bench.OpenFramings);
        OptionCount = 0;
        (gainsAreFresh, qualitiesAreFresh) = (true, cover is null);
        for (var place = 0; place < bench.OcularCount; place++)
        {
            if (bench.OverlapsOf(place) <= OverlapsLeft && bench.LeastPrice(place) <= MoneyLeft)
            {
                Add(new Option(place, bench.OverlapsOf(place), GainOf(place), cover is null ? 0 : double.PositiveInfinity));
            }
        }
    }

    /// <summary>Counts a look at so many of the options.</summary>
    public void CountLooks(int options) => steps.Count(StepsOfOption * options);

    private void Add(Option option)
    {
        indexOf[option.Place] = OptionCount;
        Options[OptionCount++] = option;
    }

    private void Show(ReadOnlySpan<Sight> sights)
    {
        foreach (ref readonly var sight in sights)
        {
            islands[sight.Telescope].Add(sight.Reach);
            cover?.Add(sight);
        }
    }
}
