using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// The problem with its Barlows settled: what the kit shows already, what each offered ocular would add, and what is left
/// of every limit.
/// </summary>
internal sealed partial class Bench : IDisposable
{
    /// <summary>Counting one by one takes about so many times as long as counting all at once.</summary>
    private const int FewAsked = 8;

    /// <summary>Of comparing two views, and of asking whether one covers a place.</summary>
    private const long StepsOfComparison = 4;

    /// <summary>Of copying a view to another table, and of taking that back.</summary>
    private const long StepsOfCopy = 16;

    /// <summary>Of making a bench, beside its tables.</summary>
    private const long StepsOfBench = 20_000;

    /// <summary>Of sorting a view among others, and of adding up what it covers.</summary>
    private const long StepsOfSorting = 60;

    private readonly Groundwork ground;
    private readonly Lending lending;
    private readonly SightTable table;
    private readonly Step leastStep;
    private readonly Lazy<Neighbourhoods> neighbourhoods;
    private readonly Lazy<int[]> overlapsAlone;
    private readonly int[]?[] overlapsWith;
    private int[]? passing;
    private readonly Lazy<LadderFigures> withEverything;
    private readonly Lazy<Money> leastPriceOfAll;
    private readonly uint[]? framingsMet;
    private readonly long[] mostPoints;

    public Bench(Groundwork ground, BarlowSet barlows)
    {
        this.ground = ground;
        leastStep = ground.Problem.LeastStep;
        ground.Steps.Count(StepsOfBench);
        Set = barlows;
        lending = new Lending(ground.Budget);
        table = TableOf(barlows.Bought.Where(barlow => !ground.SettledBarlows.Contains(barlow)));
        Settled = [.. ground.Musts.Where(item => !item.IsBarlow), .. barlows.Bought];
        Shown = [.. Enumerable.Range(0, ground.SettledOculars.Length).SelectMany(place => table.Of(place).ToArray())];
        lending.Hold<Sight>(Shown.Length);
        Reticle = ReticleChoice.On(ground, Settled);
        CountLeft = PurchaseCountRule.Left(ground.Problem, Settled.Length + Reticle.Count);
        MoneyLeft = BudgetRule.Most(ground.Problem) - Settled.Sum(item => item.ExactPrice) - Reticle.LeastPrice;
        OverlapsLeft = OverlapRule.Left(ground.Problem, OverlapsShown());
        lending.Hold<long>(ground.Oculars.Length);
        overlapsWith = new int[ground.Oculars.Length][];
        neighbourhoods = new(() => new Neighbourhoods(this, ground));
        overlapsAlone = new(CountOverlapsAlone);
        withEverything = new(FiguresWithEverything);
        leastPriceOfAll = new(() => ground.LeastPrices.DefaultIfEmpty().Min());
        OpenFramings = OpenAfter(Shown.AsSpan(), (1u << ground.Framings.Length) - 1);
        framingsMet = OpenFramings == 0
            ? null
            : [.. Enumerable.Range(0, ground.Oculars.Length).Select(place => OpenFramings & ~OpenAfter(SightsOf(place), OpenFramings))];
        mostPoints = MostPoints();
        ground.Steps.Count(StepsOfComparison * table.Count * (1 + ground.Framings.Length));
    }

    /// <summary>What settles the Barlows.</summary>
    public BarlowSet Set { get; }

    /// <summary>How many oculars there are to choose from; they are known by their places.</summary>
    public int OcularCount => ground.Oculars.Length;

    /// <summary>What is bought here whatever else is chosen, but for a reticle eyepiece that is needed besides.</summary>
    public ImmutableArray<Item> Settled { get; }

    /// <summary>What the kit shows without any offered ocular.</summary>
    public ImmutableArray<Sight> Shown { get; }

    public int OverlapsLeft { get; }

    public int CountLeft { get; }

    public Money MoneyLeft { get; }

    /// <summary>The framings, a bit each, that nothing shown meets.</summary>
    public uint OpenFramings { get; }

    /// <summary>The reticle eyepiece that must be bought besides, if one must.</summary>
    public ReticleChoice Reticle { get; }

    /// <summary>Whether the limits are kept before anything is chosen.</summary>
    public bool IsPossible => OverlapsLeft >= 0 && CountLeft >= 0 && MoneyLeft >= Money.Zero && Reticle.IsPossible;

    private ReadOnlySpan<Sight> AllSights => table.OfFirst(ground.SettledOculars.Length + OcularCount);

    /// <summary>What an offered ocular adds.</summary>
    public ReadOnlySpan<Sight> SightsOf(int place) => table.Of(ground.SettledOculars.Length + place);

    /// <summary>The open framings that an ocular meets.</summary>
    public uint FramingsMet(int place) => framingsMet is null ? 0 : framingsMet[place];

    public Step EnoughStep => ground.Problem.EnoughStep;

    /// <summary>The largest step with all oculars together: no set of this bench does better.</summary>
    public Step LeastStep => withEverything.Value.LargestStep;

    /// <summary>The mean excess with all oculars together: no set of this bench does better.</summary>
    public double LeastExcess => withEverything.Value.MeanExcess;

    /// <summary>The quality with all oculars together: no set of this bench does better.</summary>
    public double MostQuality(QualityMeasure measure)
    {
        var cover = new Cover(measure, ground.Problem.Telescopes.Length);
        ground.Steps.Count(StepsOfSorting * AllSights.Length);
        foreach (ref readonly var sight in AllSights)
        {
            cover.Add(sight);
        }

        return cover.Quality;
    }

    /// <summary>What the cheapest of an offer's wares costs.</summary>
    public Money LeastPrice(int place) => ground.LeastPrices[place];

    /// <summary>What the cheapest of all offered wares costs.</summary>
    public Money LeastPriceOfAll => leastPriceOfAll.Value;

    /// <summary>The least preference score, in units, of an offer's wares.</summary>
    public long LeastPreference(int place) => ground.LeastPreferences[place];

    /// <summary>Lends an array for as long as the bench is.</summary>
    public T[] Lend<T>(int length) => lending.Lend<T>(length);

    /// <summary>Gives the memory back: the bench must not be used any more.</summary>
    public void Dispose() => lending.Dispose();

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

    private SightTable TableOf(IEnumerable<Item> bought)
    {
        var all = ground.WithSettledBarlows;
        foreach (var barlow in bought)
        {
            using var brief = new Lending(ground.Budget);
            var through = ground.Through(barlow, brief);
            ground.Steps.Count(StepsOfCopy * (all.Count + through.Count));
            all = all.And(through, lending);
        }

        return all;
    }

    private LadderFigures FiguresWithEverything()
    {
        var all = AllSights.Length;
        using var brief = new Lending(ground.Budget);
        ground.Steps.Count(StepsOfSorting * all);
        var (reaches, starts) = (brief.Lend<Reach>(all), brief.Lend<double>(all));
        return LadderFigures.Of([.. ground.Candidacy.Telescopes.Select(t =>
        {
            var telescope = ground.Problem.Telescopes[t];
            var count = GatherReaches(t, reaches);
            return LadderFigures.Of(reaches.AsSpan(0, count), starts.AsSpan(0, count), telescope.Axis.Length, ground.Problem.MismatchLimits);
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
