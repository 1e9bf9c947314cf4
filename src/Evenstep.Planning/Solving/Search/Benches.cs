using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The benches of a problem, one a Barlow set, each made when it is first needed; those that keep no limit left out.</summary>
internal sealed class Benches(Groundwork ground)
{
    private readonly ImmutableArray<BarlowSet> sets = [.. BarlowSet.All(ground)];
    private readonly Dictionary<BarlowSet, Bench> made = [];

    /// <summary>All of them, those first whose Barlows have the most factors: there each ocular has the most powers, and good
    /// sets are found soonest.</summary>
    public IEnumerable<Bench> ByPowers => Possible(sets.OrderByDescending(set => set.Bought.Sum(item => ((Barlow)item.Optic).Factors.Length)));

    /// <summary>Those on which a set may cost less than the limit, which is asked anew before each of them; the cheapest first.</summary>
    public IEnumerable<Bench> Below(Func<Cost> limit) => Possible(sets.Where(set => set.Cost < limit()));

    private IEnumerable<Bench> Possible(IEnumerable<BarlowSet> wanted) => wanted.Select(BenchOf).Where(bench => bench.IsPossible);

    private Bench BenchOf(BarlowSet set)
    {
        if (!made.TryGetValue(set, out var bench))
        {
            made[set] = bench = new Bench(ground, set);
        }

        return bench;
    }
}
