using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// Our own exact search: it looks through all sets of purchases, leaving out only what cannot be best, and so proves what
/// it finds. It knows nothing of the constraint model.
/// </summary>
public sealed partial class SearchEngine : IDisposable
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

    /// <summary>What each bench has at the least, once all of them have been asked.</summary>
    private readonly List<double> lnLeastSteps = [];
    private bool areAllAsked;

    private WideViewWish? wish;
    private LeastStep first = new(null, double.PositiveInfinity);
    private Goal? second;
    private double? leastExcess;
    private LeastCost? third;

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
        try
        {
            var candidacy = Candidacy.Of(problem, budget);
            if (!problem.Demands.MustInclude.IsEmpty && !problem.Demands.MustInclude.All(candidacy.Candidates.Select(item => item.Id).ToHashSet().Contains))
            {
                return SearchResult.NothingAllowed;
            }

            using var ground = new Groundwork(problem, candidacy, budget);
            var result = Solve(problem, ground, new Effort(nodes, budget));
            ground.Steps.Settle();
            return result;
        }
        catch (WorkEndedException)
        {
            return SearchResult.Unfinished(null);
        }
    }

    public void Dispose() => benches.Dispose();

    private static SearchResult Solve(PurchaseProblem problem, Groundwork ground, Effort effort)
    {
        if (WideViewWish.TrueFieldWished(problem, ground.Candidacy.Candidates) is not { } field)
        {
            return Search(ground, effort, wish: null);
        }

        var granted = Search(ground.Wishing(field), effort, new WideViewWish(field, Granted: true));
        return granted.IsNothingAllowed ? Search(ground, effort, new WideViewWish(field, Granted: false)) : granted;
    }

    private static SearchResult Search(Groundwork ground, Effort effort, WideViewWish? wish)
    {
        using var engine = new SearchEngine(ground, effort) { wish = wish };
        try
        {
            return engine.Search();
        }
        catch (WorkEndedException)
        {
            return engine.Unfinished();
        }
    }

    private SearchResult Search()
    {
        FindLeastLargestStep();
        if (effort.IsSpent)
        {
            return Unfinished();
        }

        if (first.Selection is null)
        {
            return SearchResult.NothingAllowed;
        }

        var (known, excess) = first.Enough is not null ? (first.Selection, 0) : LeastMeanExcess(StageValues.StepLeeway * first.LnLeast);
        if (effort.IsSpent || known is null)
        {
            return Unfinished();
        }

        leastExcess = excess;
        var values = new StageValues(first.LnLeast, first.LnLeast, excess, GreatestQuality: null, Preference: 0);
        var best = Cheapest(values, known, first.Enough);
        return effort.IsSpent ? Unfinished() : SearchResult.Of(PlanOf(best, values, isProved: true));
    }

    private SearchResult Unfinished()
    {
        if (first.Selection is not { } known)
        {
            return SearchResult.Unfinished(null);
        }

        var bound = first.IsLeast ? first.LnLeast : Math.Min(first.LnLeast, areAllAsked ? lnLeastSteps.Append(double.PositiveInfinity).Min() : LnEnough);
        var best = third?.Cheapest ?? second?.Selection ?? known;
        var excess = leastExcess ?? Kit.Of(ground.Problem, best.Items).Figures.MeanExcess;
        return SearchResult.Unfinished(
            new HeadStart(known.Items, wish is { Granted: true } ? LnEnough : bound),
            PlanOf(best, new StageValues(first.LnLeast, bound, excess, GreatestQuality: null, Preference: 0), isProved: false));
    }

    private Plan PlanOf(Selection best, StageValues values, bool isProved) => new()
    {
        Outcome = !isProved ? Outcome.BestFound : best.Items.IsEmpty ? Outcome.NothingWorthwhile : Outcome.Optimal,
        Purchases = best.Items,
        Candidacy = ground.Candidacy,
        Values = values with { Preference = new PreferenceScore(ground.Problem).Of(best.Items) },
        Wish = wish,
    };

    private (Selection? Selection, double Excess) LeastMeanExcess(double lnLargestStep)
    {
        var least = new LeastExcess();
        second = least;
        var unfinished = ShortLooks(benches.ByPowers.Select(bench => (bench, bench.Reticle.Cheapest)), lnLargestStep, least);
        if (unfinished.Count > 0 && !least.IsReached)
        {
            least.Floor = benches.ByPowers.Min(bench => bench.LeastExcess);
            LongLooks(unfinished, benches, lnLargestStep, least);
        }

        return (least.Selection, least.Best);
    }

    private Selection Cheapest(StageValues values, Selection known, BarlowSet? knownOn)
    {
        var priceDecides = ground.Problem.Preferences.Prefer == Prefer.LowPrice;
        var least = third = new LeastCost(values.MeanExcessAllowed, known, ground.Pricing.Of(known.Items), priceDecides);
        if (knownOn is not null)
        {
            var bench = benches.Of(knownOn);
            Descend(bench, values.LnLargestStepAllowed, least, bench.Reticle.Cheapest, effort.Short(NodesOfShortLook));
        }

        if (!priceDecides)
        {
            LookThrough(benches, values.LnLargestStepAllowed, least);
            return least.Cheapest;
        }

        // What costs more than the best set known is in no better one.
        benches.Forget();
        using var left = new Benches(ground.UpTo(least.Best.Cents));
        LookThrough(left, values.LnLargestStepAllowed, least);
        return least.Cheapest;
    }

    private void LookThrough(Benches left, double lnLargestStep, LeastCost least)
    {
        var all = left.Below(() => least.Best).SelectMany(bench => bench.Reticle.ToTry.Select(reticle => (bench, reticle)));
        LongLooks(ShortLooks(all, lnLargestStep, least), left, lnLargestStep, least);
    }

    /// <summary>
    /// A short look at every bench comes first: the best set is often found at once, and then the long looks end early. Returns
    /// the benches that were not seen to the end.
    /// </summary>
    private List<(BarlowSet Set, Item? Reticle)> ShortLooks(IEnumerable<(Bench Bench, Item? Reticle)> all, double lnLargestStep, Goal goal)
    {
        List<(BarlowSet Set, Item? Reticle)> unfinished = [];
        foreach (var (bench, reticle) in all.TakeWhile(_ => !goal.IsReached))
        {
            var shortLook = effort.Short(NodesOfShortLook);
            Descend(bench, lnLargestStep, goal, reticle, shortLook);
            if (shortLook.IsSpent)
            {
                unfinished.Add((bench.Set, reticle));
            }
        }

        return unfinished;
    }

    private void LongLooks(IEnumerable<(BarlowSet Set, Item? Reticle)> unfinished, Benches on, double lnLargestStep, Goal goal)
    {
        foreach (var (set, reticle) in unfinished.TakeWhile(_ => !goal.IsReached))
        {
            Descend(on.Of(set), lnLargestStep, goal, reticle, effort);
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
}
