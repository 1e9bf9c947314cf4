using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The benches of a problem, one a Barlow set, each made when it is first needed; those that keep no limit left out.</summary>
internal sealed class Benches
{
    private readonly Groundwork ground;
    private readonly ImmutableArray<BarlowSet> sets;
    private readonly Bench?[] made;
    private readonly int[] byPowers;

    public Benches(Groundwork ground)
    {
        this.ground = ground;
        sets = [.. BarlowSet.All(ground)];
        made = new Bench?[sets.Length];
        byPowers = [.. Enumerable.Range(0, sets.Length).OrderByDescending(i => sets[i].Bought.Sum(item => ((Barlow)item.Optic).Factors.Length))];
    }

    /// <summary>All of them, those first whose Barlows have the most factors: there each ocular has the most powers, and good
    /// sets are found soonest.</summary>
    public IEnumerable<Bench> ByPowers => byPowers.Select(BenchOf).Where(bench => bench.IsPossible);

    /// <summary>Those on which a set may cost less than the limit, which is asked anew before each of them; the cheapest first.</summary>
    public IEnumerable<Bench> Below(Func<Cost> limit) =>
        Enumerable.Range(0, sets.Length).Where(i => sets[i].Cost < limit()).Select(BenchOf).Where(bench => bench.IsPossible);

    private Bench BenchOf(int i) => made[i] ??= new Bench(ground, sets[i]);
}
