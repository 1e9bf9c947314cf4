using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Solving.Paths;

/// <summary>What is owned and bought so far, and what it shows. Used again and again.</summary>
internal sealed class Holding
{
    private const int BitsOfPlace = 16;

    private const int NotCounted = int.MaxValue;

    /// <summary>Of trying a purchase, of taking over a view, and of comparing two.</summary>
    private const long StepsOfPurchase = 150;
    private const long StepsOfView = 20;
    private const long StepsOfComparison = 2;

    /// <summary>Of looking whether there is a reticle eyepiece, for an item.</summary>
    private const long StepsOfItem = 60;

    private readonly PathGround ground;
    private readonly Islands[] islands;
    private readonly List<Choice> bought = [];
    private readonly List<int> oculars = [];
    private readonly List<int> barlows = [];
    private readonly List<Sight> sights = [];
    private int overlaps;

    public Holding(PathGround ground)
    {
        this.ground = ground;
        islands = [.. Shore.All(ground.Problem, ground.Candidacy.Telescopes).Select(shore => new Islands(shore))];
    }

    public IReadOnlyList<Islands> Telescopes => islands;

    /// <summary>What is bought, in the order it was bought in.</summary>
    public IReadOnlyList<Choice> Bought => bought;

    /// <summary>The oculars, owned and bought, by their places on the ground.</summary>
    public IReadOnlyList<int> Oculars => oculars;

    /// <summary>The Barlows, owned and bought, by their places on the ground.</summary>
    public IReadOnlyList<int> Barlows => barlows;

    public Money Spent { get; private set; }

    public int CountLeft => PurchaseCountRule.Left(ground.Problem, bought.Count);

    public int BarlowsLeft => Math.Min(CountLeft, BarlowCountRule.Left(ground.Problem, barlows.Count - ground.OwnedBarlows));

    /// <summary>The framings, a bit each, that nothing shown meets.</summary>
    public uint OpenFramings { get; private set; }

    /// <summary>Names the set bought, whatever its order: a place takes 16 bits, and there are at most eight.</summary>
    public UInt128 Key => bought.Select(choice => choice.Place + 1).Order().Aggregate(UInt128.Zero, (key, place) => (key << BitsOfPlace) | (UInt128)place);

    public bool Has(Choice choice) => bought.Contains(choice);

    public Step LargestStep() => new(islands.Max(one => one.LargestStep().Ln));

    /// <summary>Whether what is bought with the owned gives the reticle asked for, if one is.</summary>
    public bool HasReticle()
    {
        if (ground.Problem.Demands.ReticleLeastPower is not { } asked)
        {
            return true;
        }

        ground.Steps.Count(StepsOfItem * (ground.Problem.Owned.Length + bought.Count) * ground.Problem.Telescopes.Length);
        Item[] items = [.. ground.Problem.Owned, .. bought.Select(choice => choice.Item)];
        Item[] through = [.. items.Where(item => item.IsBarlow)];
        return ReticleRule.IsServedBy(ground.Problem, items, through, asked);
    }

    /// <summary>Nothing is bought yet.</summary>
    public void Begin()
    {
        (Spent, overlaps, OpenFramings) = (Money.Zero, 0, (1u << ground.Framings.Length) - 1);
        bought.Clear();
        oculars.Clear();
        barlows.Clear();
        sights.Clear();
        oculars.AddRange(Enumerable.Range(0, ground.OwnedOculars));
        barlows.AddRange(Enumerable.Range(0, ground.OwnedBarlows));
        foreach (var one in islands)
        {
            one.Clear();
        }

        // What is owned may repeat itself: it is only counted where something is bought.
        overlaps = NotCounted;
        foreach (var ocular in oculars)
        {
            ShowThroughAll(ocular);
        }

        overlaps = 0;
    }

    /// <summary>Becomes another with one purchase more; false, and of no use, if a limit or the rule of overlaps forbids it.</summary>
    public bool TryBecome(Holding other, Choice choice)
    {
        ground.Steps.Count(StepsOfPurchase);
        if (other.CountLeft == 0 || other.Spent + choice.Price > BudgetRule.Most(ground.Problem)
            || (choice.Barlow >= 0 && other.BarlowsLeft <= 0) || (choice.Item.IsReticle && other.bought.Exists(one => one.Item.IsReticle)))
        {
            return false;
        }

        CopyFrom(other);
        bought.Add(choice);
        Spent += choice.Price;
        Show(choice);
        return OverlapRule.Left(ground.Problem, overlaps) >= 0;
    }

    private void CopyFrom(Holding other)
    {
        ground.Steps.Count(4 * other.sights.Count);
        (Spent, overlaps, OpenFramings) = (other.Spent, other.overlaps, other.OpenFramings);
        Copy(other.bought, bought);
        Copy(other.oculars, oculars);
        Copy(other.barlows, barlows);
        Copy(other.sights, sights);
        for (var t = 0; t < islands.Length; t++)
        {
            islands[t].CopyFrom(other.islands[t]);
        }

        static void Copy<T>(List<T> from, List<T> to)
        {
            to.Clear();
            to.AddRange(from);
        }
    }

    private void Show(Choice choice)
    {
        if (choice.Ocular >= 0)
        {
            oculars.Add(choice.Ocular);
            ShowThroughAll(choice.Ocular);
        }
        else if (choice.Barlow >= 0)
        {
            barlows.Add(choice.Barlow);
            foreach (var ocular in oculars)
            {
                Show(ground.SightsOf(ocular, choice.Barlow));
            }
        }
    }

    private void ShowThroughAll(int ocular)
    {
        Show(ground.SightsOf(ocular, Choice.None));
        foreach (var barlow in barlows)
        {
            Show(ground.SightsOf(ocular, barlow));
        }
    }

    private void Show(Sight[] more)
    {
        ground.Steps.Count(StepsOfView * more.Length);
        foreach (ref readonly var sight in more.AsSpan())
        {
            overlaps += OverlapRule.Left(ground.Problem, overlaps) >= 0 ? RepeatsOf(sight) : 0;
            sights.Add(sight);
            islands[sight.Telescope].Add(sight.Reach);
            for (var i = 0; i < ground.Framings.Length; i++)
            {
                OpenFramings &= ground.Framings[i].IsMetBy(sight) ? ~(1u << i) : uint.MaxValue;
            }
        }
    }

    private int RepeatsOf(in Sight sight)
    {
        var (count, leastStep) = (0, ground.Problem.LeastStep);
        foreach (ref readonly var other in System.Runtime.InteropServices.CollectionsMarshal.AsSpan(sights))
        {
            count += sight.Telescope == other.Telescope && (sight.NeedsPurchase || other.NeedsPurchase)
                && Overlap.Between(sight.Shows, other.Shows, leastStep) ? 1 : 0;
        }

        ground.Steps.Count(StepsOfComparison * sights.Count);
        return count;
    }
}
