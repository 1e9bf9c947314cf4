using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The benches of a problem, one a Barlow set, each made when it is first needed and made again where there was not memory
/// enough to keep it; those that keep no limit left out. While one is looked at, no other may be.</summary>
internal sealed class Benches(Groundwork ground) : IDisposable
{
    /// <summary>Of a set that is noted, and of a bench beside its tables.</summary>
    private const long BytesOfNote = 1_000;

    private const long StepsOfNote = 20;

    private readonly Dictionary<ulong, Bench> made = [];
    private readonly List<BarlowSet> noted = [];
    private IEnumerator<BarlowSet>? more;
    private long held;

    /// <summary>All of them, those first whose Barlows have the most factors: there each ocular has the most powers, and good
    /// sets are found soonest.</summary>
    public IEnumerable<Bench> ByPowers => SetsByPowers().Select(Of).Where(bench => bench.IsPossible);

    /// <summary>Those of them whose settled purchases cost no more.</summary>
    public IEnumerable<Bench> UpTo(Money price) => SetsByPowers().Where(set => set.Cost.Price <= price).Select(Of).Where(bench => bench.IsPossible);

    /// <summary>Those on which a set may cost less than the limit, which is asked anew before each of them; the cheapest first.</summary>
    public IEnumerable<Bench> Below(Func<Cost> limit) =>
        BarlowSet.All(ground).TakeWhile(set => set.Cost < limit()).Select(Of).Where(bench => bench.IsPossible);

    /// <summary>The bench of a set.</summary>
    public Bench Of(BarlowSet set)
    {
        if (made.TryGetValue(set.Key, out var bench))
        {
            return bench;
        }

        if (!ground.Budget.MayKeep(0))
        {
            Forget();
        }

        return made[set.Key] = new Bench(ground, set);
    }

    /// <summary>Gives the memory of all benches back: they must not be used any more, but can be made again.</summary>
    public void Forget()
    {
        foreach (var bench in made.Values)
        {
            bench.Dispose();
        }

        made.Clear();
    }

    public void Dispose()
    {
        Forget();
        more?.Dispose();
        ground.Budget.Release(held);
        held = 0;
    }

    private IEnumerable<BarlowSet> SetsByPowers()
    {
        for (var i = 0; i < noted.Count || NoteNext(); i++)
        {
            ground.Steps.Count(StepsOfNote);
            yield return noted[i];
        }
    }

    private bool NoteNext()
    {
        more ??= BarlowSet.ByPowers(ground).GetEnumerator();
        if (!more.MoveNext())
        {
            return false;
        }

        ground.Budget.Hold(BytesOfNote);
        held += BytesOfNote;
        noted.Add(more.Current);
        return true;
    }
}
