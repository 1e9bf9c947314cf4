namespace Evenstep.Planning.Solving.Search;

/// <summary>How much the search may do: counted in nodes and not in time, so that it always ends at the same place.</summary>
internal sealed class Effort(long nodes, CancellationToken cancellation)
{
    private const long NodesBetweenLooks = 1024;

    private long left = nodes;

    public bool IsSpent => left <= 0;

    /// <summary>A part of it, to be spent apart.</summary>
    public Effort Short(long most) => new(Math.Min(most, left), cancellation);

    /// <summary>One node more.</summary>
    public void Spend()
    {
        if (--left % NodesBetweenLooks == 0)
        {
            cancellation.ThrowIfCancellationRequested();
        }
    }

    /// <summary>What takes as long as so many nodes.</summary>
    public void Spend(long nodes)
    {
        var before = left;
        left -= nodes;
        if (before / NodesBetweenLooks != left / NodesBetweenLooks)
        {
            cancellation.ThrowIfCancellationRequested();
        }
    }
}
