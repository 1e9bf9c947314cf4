using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>A usable view in the telescope of that place.</summary>
internal readonly record struct Sight(int Telescope, bool NeedsPurchase, Showing Shows)
{
    public Reach Reach => Shows.Reach;
}

/// <summary>The sights of many oculars in one array, those of an ocular together.</summary>
internal sealed class SightTable
{
    private readonly Lending lending;
    private readonly int[] starts;
    private Sight[] sights;
    private int oculars;

    /// <param name="lending">Gives the memory, and takes it back.</param>
    /// <param name="oculars">How many there will be.</param>
    /// <param name="first">How many sights to make room for at first.</param>
    public SightTable(Lending lending, int oculars, int first)
    {
        this.lending = lending;
        starts = lending.Lend<int>(oculars + 1);
        lending.Hold<Sight>(first);
        sights = Lending.Rent<Sight>(Math.Max(1, first));
        lending.Add(Release);
    }

    /// <summary>How many sights there are.</summary>
    public int Count => starts[oculars];

    /// <summary>What the first so many oculars show.</summary>
    public ReadOnlySpan<Sight> OfFirst(int count) => sights.AsSpan(0, starts[count]);

    /// <summary>What an ocular shows, by its place in the table.</summary>
    public ReadOnlySpan<Sight> Of(int place) => sights.AsSpan(starts[place], starts[place + 1] - starts[place]);

    /// <summary>Adds what the next ocular shows.</summary>
    public void Add(ReadOnlySpan<Sight> first, ReadOnlySpan<Sight> second = default)
    {
        var (start, end) = (Count, Count + first.Length + second.Length);
        if (end > sights.Length)
        {
            Grow(end);
        }

        first.CopyTo(sights.AsSpan(start));
        second.CopyTo(sights.AsSpan(start + first.Length));
        starts[++oculars] = end;
    }

    /// <summary>A table with the sights of both, of the oculars that are in both.</summary>
    public SightTable And(SightTable other, Lending into)
    {
        var most = Math.Min(oculars, other.oculars);
        var both = new SightTable(into, most, Count + other.Count);
        for (var place = 0; place < most; place++)
        {
            both.Add(Of(place), other.Of(place));
        }

        return both;
    }

    private void Release()
    {
        sights.AsSpan(0, Count).Clear();
        Lending.Return(sights);
        sights = [];
    }

    private void Grow(int least)
    {
        lending.Hold<Sight>(Math.Max(least, 2 * sights.Length));
        var larger = Lending.Rent<Sight>(Math.Max(least, 2 * sights.Length));
        sights.AsSpan(0, Count).CopyTo(larger);
        Release();
        sights = larger;
    }
}
