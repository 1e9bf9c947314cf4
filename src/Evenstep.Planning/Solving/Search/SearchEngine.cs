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
    private readonly List<Step> leastSteps = [];
    private bool areAllAsked;

    private WideViewWish? wish;
    private LeastStep first = new(null, Step.Unlimited);
    private LeastExcess? second;
    private double? leastExcess;
    private MostQuality? third;
    private LeastCost? fourth;

    private SearchEngine(Groundwork ground, Effort effort)
    {
        this.ground = ground;
        this.effort = effort;
        benches = new Benches(ground);
        chain = Node.Chain(ground);
    }

    private PurchaseProblem Problem => ground.Problem;

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
            using var engine = new SearchEngine(ground, new Effort(nodes, budget));
            var result = Told(engine, engine.Search);
            ground.Steps.Settle();
            return result;
        }
        catch (WorkEndedException)
        {
            return SearchResult.Unfinished(null);
        }
    }

    public void Dispose() => benches.Dispose();

    /// <summary>Where the work ends in the middle of a search, what is known by then is told.</summary>
    private static SearchResult Told(SearchEngine engine, Func<SearchResult> search)
    {
        try
        {
            return search();
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

        if (first.Selection is not { } known)
        {
            return SearchResult.NothingAllowed;
        }

        if (WideViewWish.TrueFieldWished(Problem, ground.Candidacy.Candidates) is not { } field)
        {
            return Best(known);
        }

        using var wishing = new SearchEngine(ground.Wishing(field), effort) { first = first, wish = new WideViewWish(field, Granted: true) };
        if (Told(wishing, wishing.SearchGranting) is { IsNothingAllowed: false } granted)
        {
            return granted;
        }

        wish = new WideViewWish(field, Granted: false);
        return Best(known);
    }

    /// <summary>The best of the sets that keep to the first stage and grant the wish; nothing, if there is none.</summary>
    private SearchResult SearchGranting()
    {
        var any = new AnySet();
        var unfinished = ShortLooks(any);
        LongLooks(unfinished, benches, first.Allowed, any);
        first = first with { Enough = null };
        return any.Selection is { } granting ? Best(granting) : effort.IsSpent ? Unfinished() : SearchResult.NothingAllowed;
    }

    /// <param name="known">A set that keeps to the first stage.</param>
    private SearchResult Best(Selection known)
    {
        known = LeastMeanExcess(known);
        if (effort.IsSpent)
        {
            return Unfinished();
        }

        var values = new StageValues(first.Least, first.Least, leastExcess!.Value, GreatestQuality: null, Preference: 0);
        if (Problem.Preferences.Prefer != Prefer.LowPrice)
        {
            (known, var quality) = GreatestQuality(values, known);
            values = values with { GreatestQuality = quality };
        }

        var best = effort.IsSpent ? known : Cheapest(values, known);
        return effort.IsSpent ? Unfinished() : SearchResult.Of(PlanOf(best, values, isProved: true));
    }

    private SearchResult Unfinished()
    {
        if (first.Selection is not { } known)
        {
            return SearchResult.Unfinished(null);
        }

        var bound = first.IsLeast ? first.Least : Step.Min(first.Least, areAllAsked ? leastSteps.Aggregate(Step.Unlimited, Step.Min) : Problem.EnoughStep);
        var best = fourth?.Cheapest ?? third?.BestSet ?? second?.Selection ?? known;
        var excess = leastExcess ?? Kit.Of(Problem, best.Items).FiguresIn(ground.Candidacy.Telescopes).MeanExcess;
        return SearchResult.Unfinished(
            new HeadStart(known.Items, bound),
            PlanOf(best, new StageValues(first.Least, bound, excess, third?.Best, Preference: 0), isProved: false));
    }

    private Plan PlanOf(Selection best, StageValues values, bool isProved) => new()
    {
        Outcome = !isProved ? Outcome.BestFound : best.Items.IsEmpty ? Outcome.NothingWorthwhile : Outcome.Optimal,
        Purchases = best.Items,
        Candidacy = ground.Candidacy,
        Values = values with { Preference = new PreferenceScore(Problem).Of(best.Items) },
        Wish = isProved || wish is null ? wish : wish with { Granted = FramingRule.Frames(Kit.Of(Problem, best.Items), wish.TrueFieldDeg, null) },
    };

    private void LookThrough(Benches left, Step largestStep, LeastCost least)
    {
        var all = left.Below(() => least.Best).SelectMany(bench => bench.Reticle.ToTry.Select(reticle => (bench, reticle)));
        LongLooks(ShortLooks(all, largestStep, least), left, largestStep, least);
    }

    /// <summary>
    /// A short look at every bench comes first: the best set is often found at once, and then the long looks end early. Returns
    /// the benches that were not seen to the end.
    /// </summary>
    private List<(BarlowSet Set, Item? Reticle)> ShortLooks(IEnumerable<(Bench Bench, Item? Reticle)> all, Step largestStep, Goal goal)
    {
        List<(BarlowSet Set, Item? Reticle)> unfinished = [];
        foreach (var (bench, reticle) in all.TakeWhile(_ => !goal.IsReached))
        {
            var shortLook = effort.Short(NodesOfShortLook);
            Descend(bench, largestStep, goal, reticle, shortLook);
            if (shortLook.IsSpent)
            {
                unfinished.Add((bench.Set, reticle));
            }
        }

        return unfinished;
    }

    /// <summary>The same at all benches, keeping to the first stage, where it does not matter which reticle eyepiece is bought.</summary>
    private List<(BarlowSet Set, Item? Reticle)> ShortLooks(Goal goal) =>
        ShortLooks(benches.ByPowers.Select(bench => (bench, bench.Reticle.Cheapest)), first.Allowed, goal);

    private void LongLooks(IEnumerable<(BarlowSet Set, Item? Reticle)> unfinished, Benches on, Step largestStep, Goal goal)
    {
        foreach (var (set, reticle) in unfinished.TakeWhile(_ => !goal.IsReached))
        {
            Descend(on.Of(set), largestStep, goal, reticle, effort);
        }
    }

    private void Descend(Bench bench, Step step, Goal goal, Item? reticle, Effort looked)
    {
        chain[0].Begin(bench, bench.Reticle.ExtraPrice(reticle));
        if (chain[0].MoneyLeft >= Money.Zero)
        {
            var settled = reticle is null ? bench.Settled : bench.Settled.Add(reticle);
            Descent.Run(bench, chain, step, goal, looked, new Path(ground.Pricing, settled));
        }
    }
}
