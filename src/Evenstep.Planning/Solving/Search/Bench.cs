using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>A usable view in the telescope of that place, and the positions that it reaches.</summary>
internal readonly record struct Sight(int Telescope, KitView View, Reach Reach);

/// <summary>
/// The problem with its Barlows settled: what the kit shows already, what each offered ocular would add, and what is left
/// of every limit.
/// </summary>
internal sealed class Bench
{
    private readonly Groundwork ground;
    private readonly int[] overlapsAlone;
    private readonly int[]?[] overlapsWith;
    private readonly Lazy<LadderFigures> withEverything;
    private readonly double lnLeastStep;
    private readonly uint[] framingsMet;
    private readonly long[] mostPoints;

    public Bench(Groundwork ground, BarlowSet barlows)
    {
        this.ground = ground;
        lnLeastStep = ground.Problem.Preferences.LnLeastStep;
        var (problem, limits) = (ground.Problem, ground.Problem.Limits);
        Item[] through = [.. problem.Owned.Where(item => item.IsBarlow), .. barlows.Bought];
        Settled = [.. ground.Musts.Where(item => !item.IsBarlow), .. barlows.Bought];
        int[] places = [.. through.Select(ground.PlaceOfBarlow)];
        Shown = [.. Enumerable.Range(0, ground.SettledOculars.Length).SelectMany(place => ground.SightsOfSettled(place, places))];
        Sights = new Sight[ground.Oculars.Length][];
        for (var place = 0; place < Sights.Length; place++)
        {
            Sights[place] = ground.SightsOfOffer(place, places);
        }

        Reticles = ReticlesNeeded(through);
        CountLeft = limits.MaxPurchases - Settled.Length - (Reticles is { Length: > 0 } ? 1 : 0);
        CentsLeft = (long)((limits.Budget - Settled.Sum(item => item.Price)) * 100) - (Reticles is { Length: > 0 } ? Reticles.Min(ware => ware.Cost.Cents) : 0);
        OverlapsLeft = limits.AllowedOverlaps - Shown.Select((sight, i) => CountRepeats(sight, Shown.AsSpan()[(i + 1)..], needPurchase: true)).Sum();
        overlapsWith = new int[Sights.Length][];
        overlapsAlone = [.. Sights.Select(OverlapsAlone)];
        withEverything = new Lazy<LadderFigures>(FiguresWithEverything);
        OpenFramings = FramingsNotMetBy(Shown.AsSpan());
        mostPoints = MostPoints();
        framingsMet = [.. Sights.Select(sights => OpenFramings & ~FramingsNotMetBy(sights))];
    }

    /// <summary>What is bought here whatever else is chosen, but for a reticle eyepiece that is needed besides.</summary>
    public ImmutableArray<Item> Settled { get; }

    /// <summary>What the kit shows without any offered ocular.</summary>
    public ImmutableArray<Sight> Shown { get; }

    /// <summary>What each offered ocular adds, by its place.</summary>
    public Sight[][] Sights { get; }

    public int OverlapsLeft { get; }

    public int CountLeft { get; }

    public long CentsLeft { get; }

    /// <summary>The framings, a bit each, that nothing shown meets.</summary>
    public uint OpenFramings { get; }

    /// <summary>The reticle eyepieces one of which must be bought besides: none, if none need be; null, if none would do.</summary>
    public Ware[]? Reticles { get; }

    /// <summary>Whether the limits are kept before anything is chosen.</summary>
    public bool IsPossible => OverlapsLeft >= 0 && CountLeft >= 0 && CentsLeft >= 0 && Reticles is not null;

    /// <summary>The open framings that an ocular meets.</summary>
    public uint FramingsMet(int place) => framingsMet[place];

    /// <summary>The logarithm of the largest step with all oculars together: no set of this bench does better.</summary>
    public double LnLeastStep => withEverything.Value.LnLargestStep;

    /// <summary>The mean excess with all oculars together: no set of this bench does better.</summary>
    public double LeastExcess => withEverything.Value.MeanExcess;

    /// <summary>Each reticle eyepiece that would do, or a single null if none is needed.</summary>
    public IEnumerable<Item?> ReticlesToTry => Reticles is { Length: > 0 } ? Reticles.Select(ware => (Item?)ware.Item) : [null];

    /// <summary>The cheapest of the reticle eyepieces that are needed; null if none is.</summary>
    public Item? CheapestReticle => Reticles!.MinBy(ware => ware.Cost.Cents)?.Item;

    /// <summary>What a reticle eyepiece costs beyond the cheapest that would do.</summary>
    public long ExtraCents(Item? reticle) => reticle is null ? 0 : ground.Pricing.Of(reticle).Cents - Reticles!.Min(ware => ware.Cost.Cents);

    /// <summary>What the cheapest of an offer's wares costs.</summary>
    public long LeastCents(int place) => ground.LeastCents[place];

    /// <summary>The least preference score, in units, of an offer's wares.</summary>
    public long LeastPreference(int place) => ground.LeastPreferences[place];

    /// <summary>The overlaps that an ocular brings about with what is shown, and with itself.</summary>
    public int OverlapsOf(int place) => overlapsAlone[place];

    /// <summary>The overlaps between a chosen ocular and each other one, by their places.</summary>
    public int[] OverlapsWith(int chosen) => overlapsWith[chosen] ??= CountOverlapsWith(chosen);

    /// <summary>Whether an ocular covers what lies just beyond an uncovered place of a telescope's axis.</summary>
    public bool Covers(int ocular, int telescope, double place, double half)
    {
        foreach (var sight in Sights[ocular])
        {
            if (sight.Telescope == telescope && Islands.Covers(sight.Reach, place, half))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The most points that one ocular adds to a telescope's axis; without limit, if it is a zoom.</summary>
    public long MostPointsIn(int telescope) => mostPoints[telescope];

    /// <summary>The wares of an offer, or only the cheapest.</summary>
    public ReadOnlySpan<Ware> WaresOf(int place, bool every) => ground.Oculars[place].Wares.AsSpan()[..(every ? ground.Oculars[place].Wares.Length : 1)];

    private LadderFigures FiguresWithEverything()
    {
        var reaches = ground.Problem.Telescopes.Select(_ => new List<Reach>()).ToArray();
        foreach (var sight in Shown)
        {
            reaches[sight.Telescope].Add(sight.Reach);
        }

        foreach (var sights in Sights)
        {
            foreach (var sight in sights)
            {
                reaches[sight.Telescope].Add(sight.Reach);
            }
        }

        return LadderFigures.Of([.. ground.Problem.Telescopes.Select((telescope, t) =>
            LadderFigures.Of(reaches[t], telescope.Axis.Length, ground.Problem.EnoughMismatch))]);
    }

    private int[] CountOverlapsWith(int chosen)
    {
        var counts = new int[Sights.Length];
        for (var place = 0; place < counts.Length; place++)
        {
            foreach (var sight in Sights[chosen])
            {
                counts[place] += CountRepeats(sight, Sights[place], needPurchase: false);
            }
        }

        return counts;
    }

    private int OverlapsAlone(Sight[] sights)
    {
        var count = 0;
        for (var i = 0; i < sights.Length; i++)
        {
            count += CountRepeats(sights[i], Shown.AsSpan(), needPurchase: false) + CountRepeats(sights[i], sights.AsSpan(i + 1), needPurchase: false);
        }

        return count;
    }

    private int CountRepeats(Sight one, ReadOnlySpan<Sight> others, bool needPurchase)
    {
        var count = 0;
        foreach (var other in others)
        {
            if (one.Telescope == other.Telescope
                && (!needPurchase || one.View.NeedsPurchase || other.View.NeedsPurchase)
                && Overlap.Between(one.View, other.View, lnLeastStep))
            {
                count++;
            }
        }

        return count;
    }

    private long[] MostPoints()
    {
        var (most, points) = (new long[ground.Problem.Telescopes.Length], new long[ground.Problem.Telescopes.Length]);
        foreach (var sights in Sights)
        {
            Array.Clear(points);
            foreach (var sight in sights)
            {
                points[sight.Telescope] += sight.View.View.IsZoom ? int.MaxValue : 1;
                most[sight.Telescope] = Math.Max(most[sight.Telescope], points[sight.Telescope]);
            }
        }

        return most;
    }

    private uint FramingsNotMetBy(ReadOnlySpan<Sight> sights)
    {
        var open = 0u;
        for (var i = 0; i < ground.Framings.Length; i++)
        {
            var isMet = false;
            foreach (var sight in sights)
            {
                isMet |= ground.Framings[i].IsMetBy(sight.Telescope, sight.View);
            }

            open |= isMet ? 0 : 1u << i;
        }

        return open;
    }

    private Ware[]? ReticlesNeeded(Item[] through)
    {
        if (ground.Problem.Demands.ReticleLeastPower is not { } asked || ground.Problem.Owned.Concat(Settled).Any(item => item.IsReticle && Serves(item)))
        {
            return Settled.Count(item => item.IsReticle) <= 1 ? [] : null;
        }

        Ware[] serving = [.. ground.Reticles.SelectMany(offer => offer.Wares).Where(ware => Serves(ware.Item))];
        return serving.Length > 0 && !Settled.Any(item => item.IsReticle) ? serving : null;

        bool Serves(Item reticle) =>
            Reticle.HighestPower(reticle, through, ground.Problem.Telescopes) is { } power && Tolerance.AtLeast(power / asked, 1);
    }
}
