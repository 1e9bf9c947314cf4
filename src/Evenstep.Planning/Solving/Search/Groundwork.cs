using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>A width that some usable view must show, in degrees, in one telescope or (null) in any.</summary>
internal readonly record struct Framing(double WidthDeg, int? TelescopeIndex)
{
    public bool IsMetBy(in Sight sight) =>
        (TelescopeIndex is null || TelescopeIndex == sight.Telescope) && FramingRule.IsWide(sight.Shows.TrueFieldDeg, WidthDeg);
}

/// <summary>A problem laid out for the search: what is settled, what may be chosen, and every view that either can make.</summary>
internal sealed record Groundwork : IDisposable
{
    private readonly Dictionary<Item, int> barlowPlaces = [];
    private readonly List<Showing> usable = [];
    private readonly List<Sight> sights = [];
    private readonly Lending lending;
    private SightTable?[] through;
    private readonly Lazy<SightTable> withSettledBarlows;

    /// <summary>Working out one view takes about so many steps.</summary>
    private const long StepsOfView = 60;

    /// <summary>So does making an offer of an item.</summary>
    private const long StepsOfOffer = 300;

    /// <param name="problem">To be searched.</param>
    /// <param name="candidacy">Of the problem.</param>
    /// <param name="budget">Of the search.</param>
    /// <exception cref="WorkEndedException">Nothing is left of the budget.</exception>
    public Groundwork(PurchaseProblem problem, Candidacy candidacy, WorkBudget budget)
    {
        Steps = new StepCounter(budget);
        Steps.Count(StepsOfOffer * candidacy.Candidates.Length);
        lending = new Lending(budget);
        Problem = problem;
        Candidacy = candidacy;
        Pricing = new Pricing(problem);
        Musts = [.. candidacy.Candidates.Where(Demanded)];
        Reticles = OffersOf(item => item.IsReticle);
        Barlows = OffersOf(item => item.IsBarlow);
        Oculars = [.. OffersOf(item => !item.IsBarlow && !item.IsReticle).OrderBy(offer => offer.Wares[0].Cost.Price)];
        LeastPrices = [.. Oculars.Select(offer => offer.Wares[0].Cost.Price)];
        LeastPreferences = [.. Oculars.Select(offer => offer.LeastPreference)];
        SettledOculars = [.. problem.Owned.Concat(Musts).Where(item => item.Ocular is not null && !item.IsReticle)];
        SettledBarlows = [.. problem.Owned.Concat(Musts).Where(item => item.IsBarlow)];
        Framings = [.. problem.Demands.MustFrame.Select(demand => new Framing(demand.WidthDeg, demand.TelescopeIndex))];
        through = new SightTable?[Barlows.Length];
        withSettledBarlows = new(() => Table([null, .. SettledBarlows], lending));
        foreach (var (place, offer) in Barlows.Index())
        {
            foreach (var ware in offer.Wares)
            {
                barlowPlaces[ware.Item] = place;
            }
        }

        ImmutableArray<Offer> OffersOf(Func<Item, bool> isSuch) =>
            Offer.Among(problem, Pricing, [.. candidacy.Candidates.Where(item => isSuch(item) && !Demanded(item))]);

        bool Demanded(Item item) => !problem.Demands.MustInclude.IsEmpty && problem.Demands.MustInclude.Contains(item.Id);
    }

    public PurchaseProblem Problem { get; }

    public Candidacy Candidacy { get; }

    /// <summary>Counts what the search does.</summary>
    public StepCounter Steps { get; }

    public WorkBudget Budget => Steps.Budget;

    public Pricing Pricing { get; }

    /// <summary>Candidates that must be bought.</summary>
    public ImmutableArray<Item> Musts { get; }

    public ImmutableArray<Offer> Reticles { get; }

    public ImmutableArray<Offer> Barlows { get; }

    /// <summary>The eyepieces and zooms to choose from, the cheap before the dear; a search knows them by their places here.</summary>
    public ImmutableArray<Offer> Oculars { get; private init; }

    /// <summary>What the cheapest ware of each of them costs.</summary>
    public ImmutableArray<Money> LeastPrices { get; }

    /// <summary>The least preference score, in units, of the wares of each of them.</summary>
    public ImmutableArray<long> LeastPreferences { get; }

    /// <summary>The eyepieces and zooms that are in the kit whatever is chosen.</summary>
    public ImmutableArray<Item> SettledOculars { get; }

    /// <summary>The Barlows that are in the kit whatever is chosen.</summary>
    public ImmutableArray<Item> SettledBarlows { get; }

    /// <summary>What must be framed; the wish for a wide view is added while it is being granted.</summary>
    public ImmutableArray<Framing> Framings { get; private init; }

    /// <summary>What each ocular shows alone and through the settled Barlows: settled oculars first, then the offered ones.</summary>
    public SightTable WithSettledBarlows => withSettledBarlows.Value;

    /// <summary>The same ground, but a view of this true field, in degrees, is asked for as well.</summary>
    public Groundwork Wishing(double trueFieldDeg) => this with { Framings = Framings.Add(new Framing(trueFieldDeg, null)) };

    /// <summary>The same ground, but only what costs no more is to be chosen from.</summary>
    public Groundwork UpTo(Money price) => this with
    {
        Oculars = Oculars[..LeastPrices.Count(least => least <= price)],
        through = [.. through],
    };

    /// <summary>What each ocular shows through an offered Barlow, or one that is alike: worked out when first asked for, and kept while
    /// there is memory enough.</summary>
    /// <param name="barlow">The Barlow.</param>
    /// <param name="passing">Takes what is not kept.</param>
    public SightTable Through(Item barlow, Lending passing)
    {
        var place = barlowPlaces[barlow];
        return through[place] ?? (Budget.MayKeep(0) ? through[place] = Table([Barlows[place].Item], lending) : Table([Barlows[place].Item], passing));
    }

    /// <summary>An array of at least that length, so much of it clear, that is given back with the ground.</summary>
    public T[] Lend<T>(int length) => lending.Lend<T>(length);

    /// <summary>Gives all memory back; the ground, and all that was made on it, must not be used any more.</summary>
    public void Dispose() => lending.Dispose();

    private SightTable Table(ReadOnlySpan<Item?> throughEach, Lending into)
    {
        var oculars = SettledOculars.Length + Oculars.Length;
        var table = new SightTable(into, oculars, throughEach.Length * oculars);
        foreach (var ocular in SettledOculars)
        {
            AddSights(table, ocular, throughEach);
        }

        foreach (var offer in Oculars)
        {
            AddSights(table, offer.Item, throughEach);
        }

        return table;
    }

    private void AddSights(SightTable table, Item ocular, ReadOnlySpan<Item?> throughEach)
    {
        sights.Clear();
        Steps.Count(StepsOfView * throughEach.Length * Problem.Telescopes.Length);
        var isBought = !Problem.Owned.Contains(ocular);
        foreach (var barlow in throughEach)
        {
            var needsPurchase = isBought || (barlow is not null && !Problem.Owned.Contains(barlow));
            for (var t = 0; t < Problem.Telescopes.Length; t++)
            {
                usable.Clear();
                KitViews.AddUsable(Problem, Problem.Telescopes[t], ocular, isBought, barlow, usable);
                foreach (var shows in usable)
                {
                    sights.Add(new Sight(t, needsPurchase, shows));
                }
            }
        }

        table.Add(CollectionsMarshal.AsSpan(sights));
    }
}
