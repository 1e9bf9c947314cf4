using System.Collections;
using System.Collections.Immutable;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The benches of a problem, one a Barlow set, each made when it is first needed; those that keep no limit left out.</summary>
internal sealed class Benches(Groundwork ground) : IEnumerable<Bench>
{
    private readonly ImmutableArray<BarlowSet> sets = [.. BarlowSet.All(ground)];
    private readonly Dictionary<BarlowSet, Bench> made = [];

    public IEnumerator<Bench> GetEnumerator() => Below(Cost.Unknown).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The benches on which a set may cost less, asked anew before each of them.</summary>
    public IEnumerable<Bench> Below(Func<Cost> limit) => sets.Where(set => set.Cost < limit()).Select(BenchOf).Where(bench => bench.IsPossible);

    private IEnumerable<Bench> Below(Cost limit) => Below(() => limit);

    private Bench BenchOf(BarlowSet set)
    {
        if (!made.TryGetValue(set, out var bench))
        {
            made[set] = bench = new Bench(ground, set);
        }

        return bench;
    }
}
