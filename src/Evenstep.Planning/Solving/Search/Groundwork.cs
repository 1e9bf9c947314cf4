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
    private readonly KitView[][][][] views;

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
        SettledOculars = [.. problem.Owned.Concat(Musts).Where(item => item.Ocular is not null && !item.IsReticle)];
        Framings = [.. problem.Demands.MustFrame.Select(demand => new Framing(demand.WidthDeg, demand.TelescopeIndex))];

        barlows = [.. problem.Owned.Concat(Musts).Where(item => item.IsBarlow), .. Barlows.Select(offer => offer.Item)];
        barlowPlaces = barlows.Select((item, place) => (item, place)).ToDictionary(pair => pair.item, pair => pair.place);
        foreach (var ware in Barlows.SelectMany(offer => offer.Wares.Select(ware => (ware.Item, Shows: offer.Item))))
        {
            barlowPlaces[ware.Item] = barlowPlaces[ware.Shows];
        }

        views = [.. problem.Telescopes.Select(AllViews)];
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

    /// <summary>The eyepieces and zooms that are in the kit whatever is chosen.</summary>
    public ImmutableArray<Item> SettledOculars { get; }

    /// <summary>What must be framed; the wish for a wide view is added while it is being granted.</summary>
    public ImmutableArray<Framing> Framings { get; private init; }

    /// <summary>The same ground, but a view of this true field, in degrees, is asked for as well.</summary>
    public Groundwork Wishing(double trueFieldDeg) => this with { Framings = Framings.Add(new Framing(trueFieldDeg, null)) };

    /// <summary>The usable views in one telescope of an offered ocular, alone and through each of these Barlows.</summary>
    public IEnumerable<KitView> ViewsOfOffer(int telescope, int place, IEnumerable<Item> through) =>
        ViewsOf(views[telescope][SettledOculars.Length + place], through);

    /// <summary>The same of an ocular that is settled.</summary>
    public IEnumerable<KitView> ViewsOfSettled(int telescope, int place, IEnumerable<Item> through) =>
        ViewsOf(views[telescope][place], through);

    private IEnumerable<KitView> ViewsOf(KitView[][] ofOcular, IEnumerable<Item> through) =>
        through.Aggregate(ofOcular[0].AsEnumerable(), (views, barlow) => views.Concat(ofOcular[1 + barlowPlaces[barlow]]));

    /// <summary>For each ocular, settled ones first: its usable views alone, then through each Barlow.</summary>
    private KitView[][][] AllViews(TelescopeInUse telescope)
    {
        var owned = Problem.Owned.ToHashSet();
        return
        [
            .. SettledOculars.Concat(Oculars.Select(offer => offer.Item)).Select(ocular => new[]
            {
                Usable(KitViews.Alone(Problem, telescope, ocular, !owned.Contains(ocular))),
            }.Concat(barlows.Select(barlow =>
                Usable(KitViews.Through(Problem, telescope, ocular, !owned.Contains(ocular), barlow, !owned.Contains(barlow))))).ToArray()),
        ];
    }

    private static KitView[] Usable(IEnumerable<KitView> views) => [.. views.Where(view => view.IsUsable)];
}
