using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Solving.Paths;

/// <summary>A problem laid out for buying one thing after another: what may be bought, and what everything shows.</summary>
internal sealed class PathGround : IDisposable
{
    private readonly List<Item> oculars;
    private readonly List<Item> barlows;
    private readonly HashSet<Item> owned;
    private readonly Sight[]?[,] sights;
    private long held;

    /// <summary>Of working out what one ocular shows through one Barlow, in a telescope.</summary>
    private const long StepsOfViews = 150;

    private const long StepsOfItem = 200;

    /// <param name="problem">What to buy for.</param>
    /// <param name="candidacy">What may be bought.</param>
    /// <param name="budget">Counts the work.</param>
    /// <exception cref="WorkEndedException">Nothing is left of the budget.</exception>
    public PathGround(PurchaseProblem problem, Candidacy candidacy, WorkBudget budget)
    {
        Steps = new StepCounter(budget);
        Steps.Count(StepsOfItem * candidacy.Candidates.Length);
        (Problem, Candidacy) = (problem, candidacy);
        owned = [.. problem.Owned];
        oculars = [.. problem.Owned.Where(IsOcular)];
        barlows = [.. problem.Owned.Where(item => item.IsBarlow)];
        (OwnedOculars, OwnedBarlows) = (oculars.Count, barlows.Count);
        Choices = [.. WorthBuying(problem, candidacy.Candidates).Select(ChoiceOf)];
        Musts = [.. Choices.Where(choice => choice.IsMust)];
        BarlowChoices = [.. Choices.Where(choice => choice.Barlow >= 0)];
        Framings = [.. problem.Demands.MustFrame.Select(demand => new Framing(demand.WidthDeg, demand.TelescopeIndex))];
        Hold(Unsafe.SizeOf<nint>() * (long)oculars.Count * (1 + barlows.Count));
        sights = new Sight[oculars.Count, 1 + barlows.Count][];
    }

    /// <summary>Counts what the search does.</summary>
    public StepCounter Steps { get; }

    public PurchaseProblem Problem { get; }

    public Candidacy Candidacy { get; }

    /// <summary>The cheapest first.</summary>
    public ImmutableArray<Choice> Choices { get; }

    public ImmutableArray<Choice> Musts { get; }

    public ImmutableArray<Choice> BarlowChoices { get; }

    /// <summary>So many of the oculars are owned, the first.</summary>
    public int OwnedOculars { get; }

    /// <summary>So many of the Barlows are owned, the first.</summary>
    public int OwnedBarlows { get; }

    /// <summary>What must be framed in the end.</summary>
    public ImmutableArray<Framing> Framings { get; }

    /// <summary>What a Barlow offers.</summary>
    public int FactorsOf(int barlow) => ((Optics.Barlow)barlows[barlow].Optic).Factors.Length;

    public bool IsZoom(int ocular) => oculars[ocular].IsZoom;

    /// <summary>The usable views of an ocular in all telescopes through a Barlow, or alone (<see cref="Choice.None"/>).</summary>
    public Sight[] SightsOf(int ocular, int barlow) => sights[ocular, 1 + barlow] ??= Usable(oculars[ocular], barlow < 0 ? null : barlows[barlow]);

    /// <summary>Takes memory until the ground is given up.</summary>
    /// <exception cref="WorkEndedException">There is not so much left.</exception>
    public void Hold(long bytes)
    {
        Steps.Budget.Hold(bytes);
        held += bytes;
    }

    /// <summary>Gives up all memory: the ground must not be used any more.</summary>
    public void Dispose()
    {
        Steps.Budget.Release(held);
        held = 0;
    }

    private static bool IsOcular(Item item) => item.Ocular is not null && !item.IsReticle;

    /// <summary>
    /// Of alike items a path never needs two, nor any but the cheapest: without the later of them, or with the cheaper in its
    /// place, every beginning shows the same and costs no more, and what less money buys is no better. What must be bought stays.
    /// </summary>
    private static IEnumerable<Item> WorthBuying(PurchaseProblem problem, ImmutableArray<Item> candidates)
    {
        var musts = problem.Demands.MustInclude.ToHashSet();
        var byPrice = candidates.OrderBy(item => item.ExactPrice).ThenBy(Ties.Fingerprint).ThenBy(item => item.Id, StringComparer.Ordinal).ToArray();
        var cheapest = byPrice.Where(item => !musts.Contains(item.Id)).DistinctBy(item => Likeness.Of(problem, item)).ToHashSet();
        return byPrice.Where(item => musts.Contains(item.Id) || cheapest.Contains(item));
    }

    private Choice ChoiceOf(Item item, int place) =>
        new(
            place,
            item,
            IsOcular(item) ? Add(oculars, item) : Choice.None,
            item.IsBarlow ? Add(barlows, item) : Choice.None,
            Problem.Demands.MustInclude.Contains(item.Id));

    private static int Add(List<Item> list, Item item)
    {
        list.Add(item);
        return list.Count - 1;
    }

    private Sight[] Usable(Item ocular, Item? barlow)
    {
        var isBought = !owned.Contains(ocular);
        var needsPurchase = isBought || (barlow is not null && !owned.Contains(barlow));
        Steps.Count(StepsOfViews * Problem.Telescopes.Length);
        List<Sight> found = [];
        List<Showing> shown = [];
        for (var t = 0; t < Problem.Telescopes.Length; t++)
        {
            shown.Clear();
            KitViews.AddUsable(Problem, Problem.Telescopes[t], ocular, isBought, barlow, shown);
            found.AddRange(shown.Select(shows => new Sight(t, needsPurchase, shows)));
        }

        Hold(Unsafe.SizeOf<Sight>() * (1L + found.Count));
        return [.. found];
    }
}
