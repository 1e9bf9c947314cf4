using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// Our own exact search: it looks through all sets of purchases, leaving out only what cannot be best, and so proves what
/// it finds. It knows nothing of the constraint model.
/// </summary>
public sealed class SearchEngine
{
    /// <summary>While the bounds on the largest step are farther apart than this, the middle is tried.</summary>
    private const double Close = 0.03;

    private readonly Groundwork ground;
    private readonly Effort effort;
    private readonly ImmutableArray<(Bench Bench, Node[] Chain)> benches;

    private SearchEngine(Groundwork ground, Effort effort)
    {
        this.ground = ground;
        this.effort = effort;
        benches =
        [
            .. BarlowSet.All(ground).Select(set => new Bench(ground, set)).Where(bench => bench.IsPossible)
                .Select(bench => (bench, Node.Chain(ground, bench))),
        ];
    }

    private double LnEnough => 2 * ground.Problem.EnoughMismatch;

    /// <summary>The best plan, proved, unless no set is allowed or the search was too long.</summary>
    /// <param name="problem">What to plan.</param>
    /// <param name="nodes">How many sets and parts of sets may be looked at.</param>
    /// <param name="cancellation">Ends the search at once.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static SearchResult Solve(PurchaseProblem problem, long nodes, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var candidacy = Candidacy.Of(problem);
        if (!problem.Demands.MustInclude.All(candidacy.Candidates.Select(item => item.Id).ToHashSet().Contains))
        {
            return SearchResult.NothingAllowed;
        }

        var effort = new Effort(nodes, cancellation);
        var ground = new Groundwork(problem, candidacy);
        if (WideViewWish.TrueFieldWished(problem, candidacy.Candidates) is not { } field)
        {
            return new SearchEngine(ground, effort).Search(wish: null);
        }

        var granted = new SearchEngine(ground.Wishing(field), effort).Search(new WideViewWish(field, Granted: true));
        return granted.IsNothingAllowed ? new SearchEngine(ground, effort).Search(new WideViewWish(field, Granted: false)) : granted;
    }

    private SearchResult Search(WideViewWish? wish)
    {
        var first = LeastLargestStep();
        if (effort.IsSpent)
        {
            return Unfinished(first, wish);
        }

        if (first.Selection is null)
        {
            return SearchResult.NothingAllowed;
        }

        var values = new StageValues(first.LnLeast, first.LnLeast, LeastMeanExcess(StageValues.StepLeeway * first.LnLeast), Preference: 0);
        var best = Cheapest(values);
        return effort.IsSpent || best is null ? Unfinished(first, wish) : SearchResult.Of(PlanOf(best, values, wish));
    }

    private static SearchResult Unfinished(LeastStep first, WideViewWish? wish) => SearchResult.Unfinished(first.Selection is { } known
        ? new HeadStart(known.Items, first.LnBound, wish is { Granted: true } ? wish.TrueFieldDeg : null)
        : null);

    private Plan PlanOf(Selection best, StageValues values, WideViewWish? wish) => new()
    {
        Outcome = best.Items.IsEmpty ? Outcome.NothingWorthwhile : Outcome.Optimal,
        Purchases = best.Items,
        Candidacy = ground.Candidacy,
        Values = values with { Preference = new PreferenceScore(ground.Problem).Of(best.Items) },
        Wish = wish,
    };

    /// <summary>
    /// The least logarithm of the largest step, or of the step that is enough. Bench by bench the best known is undercut until
    /// nothing undercuts it; far from the bound, half the distance is tried at once.
    /// </summary>
    private LeastStep LeastLargestStep()
    {
        Selection? selection = null;
        var known = ground.Problem.Telescopes.Max(telescope => 2 * telescope.Axis.Length) + 1;
        double[] bounds = [.. benches.Select(one => Math.Max(LnEnough, one.Bench.LnStepWithEverything()))];
        for (var i = 0; i < benches.Length; i++)
        {
            var isFromHere = false;
            while (Tolerance.Above(known, bounds[i]) && !effort.IsSpent)
            {
                var halves = isFromHere && known - bounds[i] > Close;
                var threshold = halves ? (known + bounds[i]) / 2 : known - (2 * Tolerance.Value);
                var found = AnyKeepingTo(threshold, benches[i].Bench, benches[i].Chain);
                if (found.Selection is { } better)
                {
                    (selection, known, isFromHere) = (better, Math.Max(found.LnLargestStep, LnEnough), true);
                }
                else if (!effort.IsSpent)
                {
                    bounds[i] = halves ? threshold : known;
                }
            }
        }

        return new LeastStep(selection, known, Math.Min(known, bounds.DefaultIfEmpty(known).Min()));
    }

    private AnySet AnyKeepingTo(double lnStep, Bench bench, Node[] chain)
    {
        var any = new AnySet();
        var settled = bench.Reticles is { Length: > 0 } reticles ? bench.Settled.Add(reticles.MinBy(ware => ware.Cost.Cents)!.Item) : bench.Settled;
        Descend(bench, chain, lnStep, any, extraCents: 0, [.. settled]);
        return any;
    }

    private double LeastMeanExcess(double lnLargestStep)
    {
        var least = new LeastExcess();
        foreach (var (bench, chain) in benches)
        {
            Descend(bench, chain, lnLargestStep, least, extraCents: 0, []);
        }

        return least.Best;
    }

    private Selection? Cheapest(StageValues values)
    {
        var least = new LeastCost(values.MeanExcessAllowed);
        foreach (var (bench, chain) in benches)
        {
            Item?[] reticles = bench.Reticles is { Length: > 0 } needed ? [.. needed.Select(ware => ware.Item)] : [null];
            foreach (var reticle in reticles)
            {
                Item[] settled = reticle is null ? [.. bench.Settled] : [.. bench.Settled, reticle];
                Descend(bench, chain, values.LnLargestStepAllowed, least, bench.ExtraCents(reticle), settled);
            }
        }

        return least.BestSelection;
    }

    private void Descend(Bench bench, Node[] chain, double lnStep, Goal goal, long extraCents, Item[] settled)
    {
        chain[0].Begin(extraCents);
        if (chain[0].CentsLeft >= 0)
        {
            Descent.Run(bench, chain, lnStep, goal, effort, new Path(ground.Pricing, settled));
        }
    }

    private sealed record LeastStep(Selection? Selection, double LnLeast, double LnBound);
}
