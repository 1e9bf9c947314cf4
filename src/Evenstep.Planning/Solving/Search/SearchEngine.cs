using Evenstep.Planning.Budgets;
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

    private const long NodesOfShortLook = 50;

    /// <summary>Before a bench is searched to its end, each of them gets a look of so many nodes for a set that could not be better.</summary>
    private const long NodesOfLongerLook = 2000;

    private readonly Groundwork ground;
    private readonly Effort effort;
    private readonly Benches benches;
    private readonly Node[] chain;

    private SearchEngine(Groundwork ground, Effort effort)
    {
        this.ground = ground;
        this.effort = effort;
        benches = new Benches(ground);
        chain = Node.Chain(ground);
    }

    private double LnEnough => 2 * ground.Problem.EnoughMismatch;

    /// <summary>The best plan, proved, unless no set is allowed or the search was too long.</summary>
    /// <param name="problem">What to plan.</param>
    /// <param name="nodes">How many sets and parts of sets may be looked at.</param>
    /// <param name="budget">The work and memory that it may take.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static SearchResult Solve(PurchaseProblem problem, long nodes, WorkBudget budget)
    {
        budget.Look();
        var candidacy = Candidacy.Of(problem);
        if (!problem.Demands.MustInclude.IsEmpty && !problem.Demands.MustInclude.All(candidacy.Candidates.Select(item => item.Id).ToHashSet().Contains))
        {
            return SearchResult.NothingAllowed;
        }

        var effort = new Effort(nodes, budget);
        using var ground = new Groundwork(problem, candidacy);
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

        var (known, excess) = first.Enough is not null ? (first.Selection, 0) : LeastMeanExcess(StageValues.StepLeeway * first.LnLeast);
        if (effort.IsSpent || known is null)
        {
            return Unfinished(first, wish);
        }

        var values = new StageValues(first.LnLeast, first.LnLeast, excess, Preference: 0);
        var best = Cheapest(values, known, first.Enough);
        return effort.IsSpent ? Unfinished(first, wish) : SearchResult.Of(PlanOf(best, values, wish));
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
        if (LookForEnough() is ({ } onBench, { } enough))
        {
            return new LeastStep(enough, LnEnough, LnEnough, onBench);
        }

        var bound = double.PositiveInfinity;
        var best = new LeastStep(null, ground.Problem.Telescopes.Max(telescope => 2 * telescope.Axis.Length) + 1, 0);
        foreach (var bench in benches.ByPowers)
        {
            (best, var benchBound) = Undercut(best, bench);
            bound = Math.Min(bound, benchBound);
        }

        return best with { LnBound = Math.Min(bound, best.LnLeast) };
    }

    /// <summary>The best of what is known and of what a bench has, and a bound on what the bench has.</summary>
    private (LeastStep Best, double Bound) Undercut(LeastStep best, Bench bench)
    {
        var bound = Math.Max(LnEnough, bench.LnLeastStep);
        var isFromHere = false;
        while (Tolerance.Above(best.LnLeast, bound) && !effort.IsSpent)
        {
            var halves = isFromHere && best.LnLeast - bound > Close;
            var threshold = halves ? (best.LnLeast + bound) / 2 : Math.Max(0, best.LnLeast - (2 * Tolerance.Value));
            var found = AnyKeepingTo(threshold, bench, effort);
            if (found.Selection is { } better)
            {
                (best, isFromHere) = (new LeastStep(better, Math.Max(found.LnLargestStep, LnEnough), 0), true);
            }
            else if (!effort.IsSpent)
            {
                bound = halves ? threshold : best.LnLeast;
            }
        }

        return (best, bound);
    }

    /// <summary>Often some set does as well as any could, and is found soon.</summary>
    private (Bench? Bench, Selection? Selection) LookForEnough()
    {
        IEnumerable<Bench> undecided = benches.ByPowers;
        foreach (var nodes in (ReadOnlySpan<long>)[NodesOfShortLook, NodesOfLongerLook])
        {
            List<Bench> unfinished = [];
            foreach (var bench in undecided)
            {
                var look = effort.Short(nodes);
                if (AnyKeepingTo(LnEnough, bench, look).Selection is { } enough)
                {
                    return (bench, enough);
                }

                if (look.IsSpent)
                {
                    unfinished.Add(bench);
                }
            }

            undecided = unfinished;
        }

        return default;
    }

    private AnySet AnyKeepingTo(double lnStep, Bench bench, Effort looked)
    {
        var any = new AnySet();
        Descend(bench, lnStep, any, bench.Reticle.Cheapest, looked);
        return any;
    }

    private (Selection? Selection, double Excess) LeastMeanExcess(double lnLargestStep)
    {
        var least = new LeastExcess();
        var unfinished = ShortLooks(benches.ByPowers.Select(bench => (bench, bench.Reticle.Cheapest)), lnLargestStep, least);
        if (unfinished.Count > 0 && !least.IsReached)
        {
            least.Floor = benches.ByPowers.Min(bench => bench.LeastExcess);
            LongLooks(unfinished, lnLargestStep, least);
        }

        return (least.Selection, least.Best);
    }

    private Selection Cheapest(StageValues values, Selection known, Bench? knownOn)
    {
        var priceDecides = ground.Problem.Preferences.Prefer == Prefer.LowPrice;
        var least = new LeastCost(values.MeanExcessAllowed, known, ground.Pricing.Of(known.Items), priceDecides);
        if (knownOn is not null)
        {
            Descend(knownOn, values.LnLargestStepAllowed, least, knownOn.Reticle.Cheapest, effort.Short(NodesOfShortLook));
        }

        // What costs more than the best set known is in no better one.
        var left = priceDecides ? new Benches(ground.UpTo(least.Best.Cents)) : benches;
        var all = left.Below(() => least.Best).SelectMany(bench => bench.Reticle.ToTry.Select(reticle => (bench, reticle)));
        LongLooks(ShortLooks(all, values.LnLargestStepAllowed, least), values.LnLargestStepAllowed, least);
        return least.Cheapest;
    }

    /// <summary>
    /// A short look at every bench comes first: the best set is often found at once, and then the long looks end early. Returns
    /// the benches that were not seen to the end.
    /// </summary>
    private List<(Bench Bench, Item? Reticle)> ShortLooks(IEnumerable<(Bench Bench, Item? Reticle)> all, double lnLargestStep, Goal goal)
    {
        List<(Bench Bench, Item? Reticle)> unfinished = [];
        foreach (var (bench, reticle) in all.TakeWhile(_ => !goal.IsReached))
        {
            var shortLook = effort.Short(NodesOfShortLook);
            Descend(bench, lnLargestStep, goal, reticle, shortLook);
            if (shortLook.IsSpent)
            {
                unfinished.Add((bench, reticle));
            }
        }

        return unfinished;
    }

    private void LongLooks(IEnumerable<(Bench Bench, Item? Reticle)> unfinished, double lnLargestStep, Goal goal)
    {
        foreach (var (bench, reticle) in unfinished.TakeWhile(_ => !goal.IsReached))
        {
            Descend(bench, lnLargestStep, goal, reticle, effort);
        }
    }

    private void Descend(Bench bench, double lnStep, Goal goal, Item? reticle, Effort looked)
    {
        chain[0].Begin(bench, bench.Reticle.ExtraCents(reticle));
        if (chain[0].CentsLeft >= 0)
        {
            var settled = reticle is null ? bench.Settled : bench.Settled.Add(reticle);
            Descent.Run(bench, chain, lnStep, goal, looked, new Path(ground.Pricing, settled));
        }
    }

    /// <param name="Selection">A set with that step, if any is allowed.</param>
    /// <param name="LnLeast">The least known.</param>
    /// <param name="LnBound">No set has less.</param>
    /// <param name="Enough">The bench of the set if all its steps are enough: then it leaves no excess.</param>
    private sealed record LeastStep(Selection? Selection, double LnLeast, double LnBound, Bench? Enough = null);
}
