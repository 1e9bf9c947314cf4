using System.Collections.Immutable;
using System.Numerics;

namespace Evenstep.Planning.Solving.Paths;

/// <summary>The best order to buy a set in: all beginnings of all orders are subsets of it, of which there are at most 256.</summary>
internal sealed class Ordering
{
    private readonly ImmutableArray<Choice> set;
    private readonly double[] lossWith;
    private readonly double[] worstAfter;

    private Ordering(PathGround ground, Losses losses, ImmutableArray<Choice> set)
    {
        this.set = set;
        lossWith = new double[1 << set.Length];
        worstAfter = new double[1 << set.Length];
        Holding[] chain = [.. Enumerable.Range(0, set.Length + 1).Select(_ => new Holding(ground))];
        chain[0].Begin();
        FillLosses(chain, losses, depth: 0, from: 0, subset: 0);
        FillWorst();
    }

    /// <summary>The order whose greatest loss is least; of equals the cheaper purchase goes first, one after the other.</summary>
    /// <param name="ground">The problem.</param>
    /// <param name="losses">By what it is judged.</param>
    /// <param name="set">Keeps the rules that every beginning must keep.</param>
    public static Route Best(PathGround ground, Losses losses, IEnumerable<Choice> set)
    {
        var ordering = new Ordering(ground, losses, [.. set.OrderBy(choice => choice.Place)]);
        return new Route(ordering.Order(), ordering.worstAfter[0]);
    }

    private void FillLosses(Holding[] chain, Losses losses, int depth, int from, int subset)
    {
        for (var i = from; i < set.Length; i++)
        {
            chain[depth + 1].TryBecome(chain[depth], set[i]);
            lossWith[subset | (1 << i)] = losses.Of(chain[depth + 1].Spent, chain[depth + 1].LargestStep());
            FillLosses(chain, losses, depth + 1, i + 1, subset | (1 << i));
        }
    }

    /// <summary>The greatest loss that is still to come after each subset, at the least. Larger subsets are larger numbers.</summary>
    private void FillWorst()
    {
        for (var subset = worstAfter.Length - 2; subset >= 0; subset--)
        {
            worstAfter[subset] = Missing(subset).Min(i => WorstThrough(subset | (1 << i)));
        }
    }

    private double WorstThrough(int subset) => Math.Max(lossWith[subset], worstAfter[subset]);

    private IEnumerable<int> Missing(int subset) => Enumerable.Range(0, set.Length).Where(i => (subset & (1 << i)) == 0);

    private ImmutableArray<Choice> Order()
    {
        var order = ImmutableArray.CreateBuilder<Choice>();
        for (var subset = 0; BitOperations.PopCount((uint)subset) < set.Length;)
        {
            var next = Missing(subset).First(i => !Losses.IsAbove(WorstThrough(subset | (1 << i)), worstAfter[0]));
            order.Add(set[next]);
            subset |= 1 << next;
        }

        return order.ToImmutable();
    }
}
