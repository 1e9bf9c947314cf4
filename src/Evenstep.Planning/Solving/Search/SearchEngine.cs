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

    /// <summary>The best plan, proved; null if no set is allowed, or if the search was too long.</summary>
    /// <param name="problem">What to plan.</param>
    /// <param name="nodes">How many sets and parts of sets may be looked at.</param>
    /// <param name="cancellation">Ends the search at once.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static Plan? Solve(PurchaseProblem problem, long nodes, CancellationToken cancellation)
    {
        var candidacy = Candidacy.Of(problem);
        if (!problem.Demands.MustInclude.All(candidacy.Candidates.Select(item => item.Id).ToHashSet().Contains))
        {
            return null;
        }

        var effort = new Effort(nodes, cancellation);
        var ground = new Groundwork(problem, candidacy);
        if (WideViewWish.TrueFieldWished(problem, candidacy.Candidates) is not { } field)
        {
            return new SearchEngine(ground, effort).Search(wish: null);
        }

        var granted = new SearchEngine(ground.Wishing(field), effort).Search(new WideViewWish(field, Granted: true));
        return granted is not null || effort.IsSpent
            ? granted
            : new SearchEngine(ground, effort).Search(new WideViewWish(field, Granted: false));
    }

    private Plan? Search(WideViewWish? wish)
    {
        if (LeastLargestStep() is not { } lnLeast || effort.IsSpent)
        {
            return null;
        }

        var values = new StageValues(lnLeast, lnLeast, LeastMeanExcess(StageValues.StepLeeway * lnLeast), Preference: 0);
        var best = Cheapest(values);
        if (effort.IsSpent || best is null)
        {
            return null;
        }

        return new Plan
        {
            Outcome = best.Items.IsEmpty ? Outcome.NothingWorthwhile : Outcome.Optimal,
            Purchases = best.Items,
            Candidacy = ground.Candidacy,
            Values = values with { Preference = new PreferenceScore(ground.Problem).Of(best.Items) },
            Wish = wish,
        };
    }

    /// <summary>
    /// The least logarithm of the largest step, or of the step that is enough; null if no set is allowed. Bench by bench the
    /// best known is undercut until nothing undercuts it; far from the bound, half the distance is tried at once.
    /// </summary>
    private double? LeastLargestStep()
    {
        var none = ground.Problem.Telescopes.Max(telescope => 2 * telescope.Axis.Length) + 1;
        var known = none;
        foreach (var (bench, chain) in benches)
        {
            var bound = Math.Max(LnEnough, bench.LnStepWithEverything());
            var threshold = known - (2 * Tolerance.Value);
            while (Tolerance.Above(known, bound))
            {
                if (AnyKeepingTo(threshold, bench, chain) is { } found)
                {
                    known = Math.Max(found, LnEnough);
                }
                else if (threshold >= known - (2 * Tolerance.Value))
                {
                    break;
                }
                else
                {
                    bound = threshold;
                }

                threshold = known - bound > Close ? (known + bound) / 2 : known - (2 * Tolerance.Value);
            }
        }

        return known < none ? known : null;
    }

    private double? AnyKeepingTo(double lnStep, Bench bench, Node[] chain)
    {
        var any = new AnySet();
        Descend(bench, chain, lnStep, any, extraCents: 0, []);
        return any.LnLargestStep;
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
}
