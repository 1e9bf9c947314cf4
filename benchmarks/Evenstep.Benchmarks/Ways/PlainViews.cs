using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Ways;

/// <summary>A usable view that a kit might have.</summary>
/// <param name="KitView">Optics and items.</param>
/// <param name="Needs">The candidates, by number, that must be bought for it: none, one or two.</param>
internal sealed record PlainView(KitView KitView, ImmutableArray<int> Needs)
{
    public double At => KitView.View.From;
}

/// <summary>Every usable view that the candidates and the owned items make in the one telescope, from low power to high.</summary>
internal sealed class PlainViews
{
    /// <summary>At 60,000 a solver needs seconds, at 300,000 none was seen to end; larger models only fill the memory.</summary>
    public const long MostArcs = 250_000;

    private readonly List<PlainView> views = [];

    private PlainViews(PurchaseProblem problem, ImmutableArray<Item> candidates)
    {
        Problem = problem;
        Candidates = candidates;
        Collect();
        views.Sort((a, b) => a.At.CompareTo(b.At));
    }

    public PurchaseProblem Problem { get; }

    public ImmutableArray<Item> Candidates { get; }

    public IReadOnlyList<PlainView> Listed => views;

    /// <summary>From every view to every later one, and from and to both ends of the range.</summary>
    public long Arcs => ((views.Count + 2L) * (views.Count + 1)) / 2;

    /// <summary>Null for what the plain model does not carry: several telescopes, zooms, a reticle, allowed overlaps.</summary>
    public static PlainViews? Of(PurchaseProblem problem)
    {
        var candidates = Candidacy.Of(problem).Candidates;
        var isCarried = problem.Telescopes.Length == 1
            && problem.Limits.AllowedOverlaps == 0
            && problem.Demands.ReticleLeastPower is null
            && !candidates.Concat(problem.Owned).Any(item => item.IsZoom);
        return isCarried ? new PlainViews(problem, candidates) : null;
    }

    private void Collect()
    {
        (Item Item, ImmutableArray<int> Needs)[] all =
        [
            .. Problem.Owned.Select(item => (item, ImmutableArray<int>.Empty)),
            .. Candidates.Select((item, number) => (item, ImmutableArray.Create(number))),
        ];
        var telescope = Problem.Telescopes[0];
        foreach (var (eyepiece, needs) in all.Where(one => one.Item.Ocular is not null))
        {
            Add(KitViews.Alone(Problem, telescope, eyepiece, !needs.IsEmpty), needs);
            foreach (var (barlow, barlowNeeds) in all.Where(one => one.Item.IsBarlow))
            {
                Add(KitViews.Through(Problem, telescope, eyepiece, !needs.IsEmpty, barlow, !barlowNeeds.IsEmpty), needs.AddRange(barlowNeeds));
            }
        }
    }

    private void Add(IEnumerable<KitView> found, ImmutableArray<int> needs) =>
        views.AddRange(found.Where(view => view.IsUsable).Select(view => new PlainView(view, needs)));
}
