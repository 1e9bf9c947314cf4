using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Paths;

/// <summary>
/// Finds the no-regret path. The loss after a purchase depends on the set bought so far and not on the order it was bought
/// in; so both parts of the search go from set to set, one purchase at a time, and meet each set once.
/// </summary>
internal sealed class PathSearch
{
    /// <summary>A greatest loss up to this much above the least attainable is as good: common practice, no source.</summary>
    public const double LossLeeway = 0.05;

    /// <summary>Of a set that was met, and of one that waits.</summary>
    private const long BytesOfMet = 64;
    private const long BytesOfOpen = 200;

    private readonly PathGround ground;
    private readonly Losses losses;
    private readonly Destination destination;
    private readonly Holding[] chain;
    private readonly HashSet<UInt128> met = [];
    private Route best;

    /// <param name="ground">The problem.</param>
    /// <param name="losses">By what paths are judged.</param>
    /// <param name="destination">Where they must end.</param>
    /// <param name="known">A path that ends there.</param>
    public PathSearch(PathGround ground, Losses losses, Destination destination, Route known)
    {
        this.ground = ground;
        this.losses = losses;
        this.destination = destination;
        best = known;
        chain = [.. Enumerable.Range(0, ground.Problem.Limits.MaxPurchases + 1).Select(_ => new Holding(ground))];
        chain[0].Begin();
    }

    /// <summary>The best path known in the end, the least greatest loss of any path (null if the work ended before that was known), and whether
    /// no path is better.</summary>
    public (Route Best, double? LeastLoss, bool IsProved) Run()
    {
        double? least = null;
        try
        {
            FindLeastLoss();
            least = best.GreatestLoss;
            FindCheapest(best.GreatestLoss + LossLeeway);
            ground.Steps.Settle();
            return (best, least, IsProved: true);
        }
        catch (WorkEndedException)
        {
            return (best, least, IsProved: false);
        }
    }

    /// <summary>From the set whose greatest loss on the way is least, always: the first that arrives has the least of all.</summary>
    private void FindLeastLoss()
    {
        var open = new PriorityQueue<Choice[], (double Loss, double LnStep)>();
        Consider(chain[0], byLoss: true);
        open.Enqueue([], (0, 0));
        while (open.TryDequeue(out var bought, out var reached) && Losses.IsAbove(best.GreatestLoss, reached.Loss))
        {
            var holding = Rebuild(bought);
            if (met.Add(holding.Key))
            {
                ground.Hold(BytesOfMet);
                foreach (var (next, loss) in Nexts(holding, reached.Loss, most: best.GreatestLoss))
                {
                    if (!met.Contains(next.Key) && !Consider(next, byLoss: true) && destination.LeastMoneyFrom(next) <= MoneyLeft(next))
                    {
                        ground.Hold(BytesOfOpen);
                        open.Enqueue([.. next.Bought], (loss, next.LargestStep().Ln));
                    }
                }
            }
        }
    }

    /// <summary>Depth first, the cheap before the dear, through all sets that can be reached within a loss.</summary>
    private void FindCheapest(double mostLoss)
    {
        met.Clear();
        Consider(chain[0], byLoss: false);
        Below(0, mostLoss);
    }

    private void Below(int depth, double mostLoss)
    {
        foreach (var choice in chain[depth].CountLeft > 0 ? ground.Choices : [])
        {
            if (chain[depth].Spent + choice.Price > best.TotalPrice)
            {
                return;
            }

            var next = chain[depth + 1];
            if (TryBuy(chain[depth], choice, next) && !Losses.IsAbove(LossOf(next), mostLoss) && met.Add(next.Key))
            {
                ground.Hold(BytesOfMet);
                Consider(next, byLoss: false);
                if (next.CountLeft > 0 && next.Spent + destination.LeastMoneyFrom(next) <= best.TotalPrice)
                {
                    Below(depth + 1, mostLoss);
                }
            }
        }
    }

    /// <summary>What can be bought next without losing more than the most; each is only good until the one after it.</summary>
    private IEnumerable<(Holding Next, double Loss)> Nexts(Holding holding, double lossSoFar, double most)
    {
        var next = chain[holding.Bought.Count + 1 < chain.Length ? holding.Bought.Count + 1 : 0];
        foreach (var choice in holding.CountLeft > 0 ? ground.Choices : [])
        {
            if (TryBuy(holding, choice, next))
            {
                var loss = Math.Max(lossSoFar, LossOf(next));
                if (Losses.IsAbove(most, loss))
                {
                    yield return (next, loss);
                }
            }
        }
    }

    private static bool TryBuy(Holding holding, Choice choice, Holding next) => !holding.Has(choice) && next.TryBecome(holding, choice);

    /// <summary>Says whether a set arrives; the best order of it may be the best path.</summary>
    private bool Consider(Holding holding, bool byLoss)
    {
        if (!destination.IsReachedBy(holding))
        {
            return false;
        }

        var route = Ordering.Best(ground, losses, holding.Bought);
        if (byLoss ? Losses.IsAbove(best.GreatestLoss, route.GreatestLoss) : route.IsBetterThan(best))
        {
            best = route;
        }

        return true;
    }

    private Holding Rebuild(Choice[] bought)
    {
        for (var depth = 0; depth < bought.Length; depth++)
        {
            chain[depth + 1].TryBecome(chain[depth], bought[depth]);
        }

        return chain[bought.Length];
    }

    private double LossOf(Holding holding) => losses.Of(holding.Spent, holding.LargestStep());

    private Money MoneyLeft(Holding holding) => BudgetRule.Most(ground.Problem) - holding.Spent;
}
