using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>A width that some usable view must show, in degrees, in one telescope or (null) in any.</summary>
internal readonly record struct Framing(double WidthDeg, int? TelescopeIndex)
{
    public bool IsMetBy(int telescope, KitView view) =>
        (TelescopeIndex is null || TelescopeIndex == telescope) && Tolerance.AtLeast(view.View.TrueFieldDeg / WidthDeg, 1);
}

/// <summary>A problem laid out for the search: what is settled, what may be chosen, and every view that either can make.</summary>
internal sealed record Groundwork
{
    private readonly List<Item> barlows;
    private readonly Dictionary<Item, int> barlowPlaces;
    private readonly HashSet<Item> owned;
    private readonly Sight[][]?[] columns;

    public Groundwork(PurchaseProblem problem, Candidacy candidacy)
    {
        Problem = problem;
        Candidacy = candidacy;
        Pricing = new Pricing(problem);
        var demanded = problem.Demands.MustInclude.ToHashSet();
        Musts = [.. candidacy.Candidates.Where(item => demanded.Contains(item.Id))];
        var rest = candidacy.Candidates.Where(item => !demanded.Contains(item.Id)).ToArray();
        Reticles = Offer.Among(problem, Pricing, rest.Where(item => item.IsReticle));
        Barlows = Offer.Among(problem, Pricing, rest.Where(item => item.IsBarlow));
        Oculars = Offer.Among(problem, Pricing, rest.Where(item => item.Ocular is not null && !item.IsReticle));
        LeastCents = [.. Oculars.Select(offer => offer.Wares.Min(ware => ware.Cost.Cents))];
        LeastPreferences = [.. Oculars.Select(offer => offer.Wares.Min(ware => ware.Cost.Preference))];
        SettledOculars = [.. problem.Owned.Concat(Musts).Where(item => item.Ocular is not null && !item.IsReticle)];
        Framings = [.. problem.Demands.MustFrame.Select(demand => new Framing(demand.WidthDeg, demand.TelescopeIndex))];

        barlows = [.. problem.Owned.Concat(Musts).Where(item => item.IsBarlow), .. Barlows.Select(offer => offer.Item)];
        barlowPlaces = barlows.Select((item, place) => (item, place)).ToDictionary(pair => pair.item, pair => pair.place);
        foreach (var ware in Barlows.SelectMany(offer => offer.Wares.Select(ware => (ware.Item, Shows: offer.Item))))
        {
            barlowPlaces[ware.Item] = barlowPlaces[ware.Shows];
        }

        owned = [.. problem.Owned];
        columns = new Sight[1 + barlows.Count][][];
    }

    public PurchaseProblem Problem { get; }

    public Candidacy Candidacy { get; }

    public Pricing Pricing { get; }

    /// <summary>Candidates that must be bought.</summary>
    public ImmutableArray<Item> Musts { get; }

    public ImmutableArray<Offer> Reticles { get; }

    public ImmutableArray<Offer> Barlows { get; }

    /// <summary>The eyepieces and zooms to choose from, which a search knows by their places here.</summary>
    public ImmutableArray<Offer> Oculars { get; }

    /// <summary>What the cheapest ware of each of them costs.</summary>
    public ImmutableArray<long> LeastCents { get; }

    /// <summary>The least preference score, in units, of the wares of each of them.</summary>
    public ImmutableArray<long> LeastPreferences { get; }

    /// <summary>The eyepieces and zooms that are in the kit whatever is chosen.</summary>
    public ImmutableArray<Item> SettledOculars { get; }

    /// <summary>What must be framed; the wish for a wide view is added while it is being granted.</summary>
    public ImmutableArray<Framing> Framings { get; private init; }

    /// <summary>The same ground, but a view of this true field, in degrees, is asked for as well.</summary>
    public Groundwork Wishing(double trueFieldDeg) => this with { Framings = Framings.Add(new Framing(trueFieldDeg, null)) };

    /// <summary>What an offered ocular shows in all telescopes, alone and through each of these Barlows, by their places.</summary>
    public Sight[] SightsOfOffer(int place, ReadOnlySpan<int> through) => SightsOf(SettledOculars.Length + place, through);

    /// <summary>The same of an ocular that is settled.</summary>
    public Sight[] SightsOfSettled(int place, ReadOnlySpan<int> through) => SightsOf(place, through);

    /// <summary>The place among all Barlows of one, or of one that is alike.</summary>
    public int PlaceOfBarlow(Item barlow) => barlowPlaces[barlow];

    private Sight[] SightsOf(int ocular, ReadOnlySpan<int> through)
    {
        var alone = Column(0)[ocular];
        var count = alone.Length;
        foreach (var barlow in through)
        {
            count += Column(1 + barlow)[ocular].Length;
        }

        var sights = new Sight[count];
        alone.CopyTo(sights, 0);
        var end = alone.Length;
        foreach (var barlow in through)
        {
            var more = Column(1 + barlow)[ocular];
            more.CopyTo(sights, end);
            end += more.Length;
        }

        return sights;
    }

    /// <summary>For each ocular, settled ones first, its usable views alone (0) or through a Barlow: worked out when a bench
    /// first asks for them.</summary>
    private Sight[][] Column(int place) => columns[place] ??=
    [
        .. SettledOculars.Concat(Oculars.Select(offer => offer.Item)).Select(ocular => Usable(ocular, place == 0 ? null : barlows[place - 1])),
    ];

    private Sight[] Usable(Item ocular, Item? barlow)
    {
        List<Sight> usable = [];
        for (var t = 0; t < Problem.Telescopes.Length; t++)
        {
            var (telescope, bought) = (Problem.Telescopes[t], !owned.Contains(ocular));
            var views = barlow is null
                ? KitViews.Alone(Problem, telescope, ocular, bought)
                : KitViews.Through(Problem, telescope, ocular, bought, barlow, !owned.Contains(barlow));
            foreach (var view in views)
            {
                if (view.IsUsable)
                {
                    usable.Add(new Sight(t, view, view.Reach));
                }
            }
        }

        return [.. usable];
    }
}
