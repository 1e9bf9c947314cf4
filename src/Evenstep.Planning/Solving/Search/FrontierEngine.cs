using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// Finds, for every budget, the least largest step: band by band of prices, the cheap before the dear, so that whatever the
/// cheaper bands have is known when a dearer one is looked through, and must be beaten there.
/// </summary>
internal sealed class FrontierEngine : IDisposable
{
    private const int BandCount = 9;

    private readonly Groundwork ground;
    private readonly Effort effort;
    private readonly Benches benches;
    private readonly Node[] chain;
    private readonly Frontier frontier = new();

    private Money knownBelow;

    private FrontierEngine(Groundwork ground, Effort effort)
    {
        this.ground = ground;
        this.effort = effort;
        benches = new Benches(ground);
        chain = Node.Chain(ground);
    }

    private Money Budget => BudgetRule.Most(ground.Problem);

    /// <summary>The frontier of a problem whose demands only name candidates.</summary>
    /// <param name="problem">Its wish for a wide view is left aside.</param>
    /// <param name="candidacy">Of the problem.</param>
    /// <param name="budget">Ends the search where it is spent.</param>
    /// <exception cref="WorkEndedException">The budget ended before the search began.</exception>
    public static SpendingFrontier Solve(PurchaseProblem problem, Candidacy candidacy, WorkBudget budget)
    {
        using var ground = new Groundwork(problem, candidacy, budget);
        using var engine = new FrontierEngine(ground, new Effort(long.MaxValue, budget));
        return engine.Search();
    }

    public void Dispose() => benches.Dispose();

    private SpendingFrontier Search()
    {
        try
        {
            foreach (var upTo in Bands())
            {
                LookThrough(knownBelow, upTo);
                knownBelow = upTo + Money.Smallest;
            }

            ground.Steps.Settle();
        }
        catch (WorkEndedException)
        {
            // What is known of the bands seen to the end stays known.
        }

        decimal? provedUpTo = knownBelow == Money.Zero ? null : (knownBelow - Money.Smallest).ToDecimal();
        return new SpendingFrontier(ground.Problem, [.. frontier.Outposts.Select(PointOf)], provedUpTo);
    }

    /// <summary>The upper ends of the bands. Each is half as high again as the one below it.</summary>
    private IEnumerable<Money> Bands()
    {
        List<Money> ends = [Budget];
        while (ends.Count < BandCount)
        {
            ends.Add(new Money(2 * ends[^1].Hundredths / 3));
        }

        return ends.Distinct().Reverse();
    }

    private void LookThrough(Money knownBelow, Money upTo)
    {
        foreach (var bench in benches.UpTo(upTo))
        {
            var reticle = bench.Reticle.Cheapest;
            chain[0].Begin(bench, Budget - upTo);
            if (chain[0].MoneyLeft >= Money.Zero)
            {
                var settled = reticle is null ? bench.Settled : bench.Settled.Add(reticle);
                FrontierDescent.Run(bench, chain, frontier, knownBelow, effort, new Path(ground.Pricing, settled));
            }
        }
    }

    private static SpendingPoint PointOf(Outpost outpost) => new(outpost.Selection.Items, outpost.Cost.Price.ToDecimal(), outpost.Step);
}
