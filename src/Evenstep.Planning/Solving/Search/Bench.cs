using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// The problem with its Barlows settled: what the kit shows already, what each offered ocular would add, and what is left
/// of every limit.
/// </summary>
internal sealed class Bench
{
    /// <summary>Counting one by one takes about so many times as long as counting all at once.</summary>
    private const int FewAsked = 8;

    private readonly Groundwork ground;
    private readonly SightTable table;
    private readonly double lnLeastStep;
    private readonly Lazy<Neighbourhoods> neighbourhoods;
    private readonly Lazy<int[]> overlapsAlone;
    private readonly int[]?[] overlapsWith;
    private readonly Lazy<LadderFigures> withEverything;
    private readonly Lazy<long> leastCentsOfAll;
    private readonly uint[]? framingsMet;
    private readonly long[] mostPoints;

    public Bench(Groundwork ground, BarlowSet barlows)
    {
        this.ground = ground;
        lnLeastStep = ground.Problem.Preferences.LnLeastStep;
        var limits = ground.Problem.Limits;
        var bought = barlows.Bought.Where(barlow => !ground.SettledBarlows.Contains(barlow));
        table = bought.Select(ground.Through).Aggregate(ground.WithSettledBarlows, (all, more) => all.And(more, ground));
        Settled = [.. ground.Musts.Where(item => !item.IsBarlow), .. barlows.Bought];
        Shown = [.. Enumerable.Range(0, ground.SettledOculars.Length).SelectMany(place => table.Of(place).ToArray())];
        Reticle = ReticleChoice.On(ground, Settled);
        CountLeft = limits.MaxPurchases - Settled.Length - Reticle.Count;
        CentsLeft = (long)(limits.Budget * 100) - Settled.Sum(item => item.Cents) - Reticle.LeastCents;
        OverlapsLeft = limits.AllowedOverlaps - OverlapsShown();
        overlapsWith = new int[ground.Oculars.Length][];
        neighbourhoods = new(() => new Neighbourhoods(this, ground));
        overlapsAlone = new(CountOverlapsAlone);
        withEverything = new(FiguresWithEverything);
        leastCentsOfAll = new(() => ground.LeastCents.DefaultIfEmpty(0).Min());
        OpenFramings = OpenAfter(Shown.AsSpan(), (1u << ground.Framings.Length) - 1);
        framingsMet = OpenFramings == 0 ? null : [.. Enumerable.Range(0, ground.Oculars.Length).Select(place => OpenFramings & ~OpenAfter(SightsOf(place), OpenFramings))];
        mostPoints = MostPoints();
    }

    /// <summary>How many oculars there are to choose from; they are known by their places.</summary>
    public int OcularCount => ground.Oculars.Length;

    /// <summary>What is bought here whatever else is chosen, but for a reticle eyepiece that is needed besides.</summary>
    public ImmutableArray<Item> Settled { get; }

    /// <summary>What the kit shows without any offered ocular.</summary>
    public ImmutableArray<Sight> Shown { get; }

    public int OverlapsLeft { get; }

    public int CountLeft { get; }

    public long CentsLeft { get; }

    /// <summary>The framings, a bit each, that nothing shown meets.</summary>
    public uint OpenFramings { get; }

    /// <summary>The reticle eyepiece that must be bought besides, if one must.</summary>
    public ReticleChoice Reticle { get; }

    /// <summary>Whether the limits are kept before anything is chosen.</summary>
    public bool IsPossible => OverlapsLeft >= 0 && CountLeft >= 0 && CentsLeft >= 0 && Reticle.IsPossible;

    private ReadOnlySpan<Sight> AllSights => table.OfFirst(ground.SettledOculars.Length + OcularCount);

    /// <summary>What an offered ocular adds.</summary>
    public ReadOnlySpan<Sight> SightsOf(int place) => table.Of(ground.SettledOculars.Length + place);

    /// <summary>The open framings that an ocular meets.</summary>
    public uint FramingsMet(int place) => framingsMet is null ? 0 : framingsMet[place];

    /// <summary>The logarithm of the largest step with all oculars together: no set of this bench does better.</summary>
    public double LnLeastStep => withEverything.Value.LnLargestStep;

    /// <summary>The mean excess with all oculars together: no set of this bench does better.</summary>
    public double LeastExcess => withEverything.Value.MeanExcess;

    /// <summary>What the cheapest of an offer's wares costs.</summary>
    public long LeastCents(int place) => ground.LeastCents[place];

    /// <summary>What the cheapest of all offered wares costs.</summary>
    public long LeastCentsOfAll => leastCentsOfAll.Value;

    /// <summary>The least preference score, in units, of an offer's wares.</summary>
    public long LeastPreference(int place) => ground.LeastPreferences[place];

    /// <summary>The overlaps that an ocular brings about with what is shown, and with itself.</summary>
    public int OverlapsOf(int place) => overlapsAlone.Value[place];

    /// <summary>The overlaps between a chosen ocular and others: counted for all of them at once, unless few are asked for.</summary>
    public OverlapsOfOne OverlapsWith(int chosen, int asked) =>
        new(this, chosen, overlapsWith[chosen] ?? (asked < OcularCount / FewAsked ? null : overlapsWith[chosen] = CountOverlapsWith(chosen)));

    /// <summary>The overlaps between two oculars.</summary>
    public int OverlapsBetween(int one, int other)
    {
        var count = 0;
        var others = SightsOf(other);
        foreach (ref readonly var sight in SightsOf(one))
        {
            count += CountRepeats(sight, others);
        }

        return count;
    }

    /// <summary>Whether an ocular covers what lies just beyond an uncovered place of a telescope's axis.</summary>
    public bool Covers(int ocular, int telescope, double place, double half)
    {
        foreach (ref readonly var sight in SightsOf(ocular))
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
        var all = AllSights.Length;
        var (reaches, starts) = (ground.Lend<Reach>(all), ground.Lend<double>(all));
        return LadderFigures.Of([.. ground.Problem.Telescopes.Select((telescope, t) =>
        {
            var count = GatherReaches(t, reaches);
            return LadderFigures.Of(reaches.AsSpan(0, count), starts.AsSpan(0, count), telescope.Axis.Length, ground.Problem.EnoughMismatch);
        })]);
    }

    /// <summary>Copies all reaches in a telescope, and says how many they are.</summary>
    private int GatherReaches(int telescope, Span<Reach> reaches)
    {
        var count = 0;
        foreach (ref readonly var sight in AllSights)
        {
            if (sight.Telescope == telescope)
            {
                reaches[count++] = sight.Reach;
            }
        }

        return count;
    }

    private int OverlapsShown()
    {
        var count = 0;
        for (var i = 0; i < Shown.Length; i++)
        {
            foreach (ref readonly var other in Shown.AsSpan()[(i + 1)..])
            {
                count += (Shown[i].NeedsPurchase || other.NeedsPurchase) && Repeats(Shown[i], other) ? 1 : 0;
            }
        }

        return count;
    }

    private int[] CountOverlapsWith(int chosen)
    {
        var counts = ground.Lend<int>(OcularCount);
        foreach (ref readonly var sight in SightsOf(chosen))
        {
            neighbourhoods.Value.CountRepeats(sight, counts);
        }

        return counts;
    }

    private int[] CountOverlapsAlone()
    {
        var counts = ground.Lend<int>(OcularCount);
        foreach (ref readonly var sight in Shown.AsSpan())
        {
            neighbourhoods.Value.CountRepeats(sight, counts);
        }

        for (var place = 0; place < OcularCount; place++)
        {
            var sights = SightsOf(place);
            for (var i = 1; i < sights.Length; i++)
            {
                counts[place] += CountRepeats(sights[i], sights[..i]);
            }
        }

        return counts;
    }

    private int CountRepeats(in Sight one, ReadOnlySpan<Sight> others)
    {
        var count = 0;
        foreach (ref readonly var other in others)
        {
            count += Repeats(one, other) ? 1 : 0;
        }

        return count;
    }

    private bool Repeats(in Sight one, in Sight other) =>
        one.Telescope == other.Telescope && Overlap.Between(one.Shows, other.Shows, lnLeastStep);

    private long[] MostPoints()
    {
        var (most, points) = (new long[ground.Problem.Telescopes.Length], new long[ground.Problem.Telescopes.Length]);
        for (var place = 0; place < OcularCount; place++)
        {
            Array.Clear(points);
            foreach (ref readonly var sight in SightsOf(place))
            {
                points[sight.Telescope] += sight.Shows.IsZoom ? int.MaxValue : 1;
                most[sight.Telescope] = Math.Max(most[sight.Telescope], points[sight.Telescope]);
            }
        }

        return most;
    }

    /// <summary>The framings that are still open, of those that were, with these sights.</summary>
    private uint OpenAfter(ReadOnlySpan<Sight> sights, uint open)
    {
        for (var i = 0; i < ground.Framings.Length; i++)
        {
            foreach (ref readonly var sight in sights)
            {
                open &= ground.Framings[i].IsMetBy(sight) ? ~(1u << i) : uint.MaxValue;
            }
        }

        return open;
    }
}
