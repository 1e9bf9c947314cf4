using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The positions of one axis that want a view of some quality, as stretches in ascending order that do not touch.</summary>
internal sealed class Wanting
{
    private const int FirstCapacity = 8;

    private Reach[] stretches = new Reach[FirstCapacity];
    private int count;

    /// <summary>Of all stretches together.</summary>
    public double Length { get; private set; }

    public void Begin(ImmutableArray<Reach> all)
    {
        Length = Stretches.LengthOf(all);
        count = all.Length;
        MakeRoom();
        all.CopyTo(stretches);
    }

    public void CopyFrom(Wanting other)
    {
        (count, Length) = (other.count, other.Length);
        MakeRoom();
        Array.Copy(other.stretches, stretches, count);
    }

    /// <summary>How much of it lies within a reach.</summary>
    public double LengthIn(Reach reach)
    {
        var length = 0.0;
        for (var i = 0; i < count && stretches[i].From < reach.To; i++)
        {
            length += Math.Max(0, Math.Min(stretches[i].To, reach.To) - Math.Max(stretches[i].From, reach.From));
        }

        return length;
    }

    /// <summary>Takes a reach out of it, and says how long what was taken is.</summary>
    public double Take(Reach reach)
    {
        var first = 0;
        while (first < count && stretches[first].To <= reach.From)
        {
            first++;
        }

        var after = first;
        var length = 0.0;
        while (after < count && stretches[after].From < reach.To)
        {
            length += Math.Min(stretches[after].To, reach.To) - Math.Max(stretches[after].From, reach.From);
            after++;
        }

        if (first < after)
        {
            Replace(first, after, reach);
            Length -= length;
        }

        return length;
    }

    /// <summary>Keeps what sticks out on either side of the stretches that a reach meets.</summary>
    private void Replace(int first, int after, Reach reach)
    {
        var (lower, upper) = (new Reach(stretches[first].From, reach.From), new Reach(reach.To, stretches[after - 1].To));
        var kept = (lower.From < lower.To ? 1 : 0) + (upper.From < upper.To ? 1 : 0);
        var behind = count - after;
        count += kept - (after - first);
        MakeRoom();
        Array.Copy(stretches, after, stretches, first + kept, behind);
        if (lower.From < lower.To)
        {
            stretches[first++] = lower;
        }

        if (upper.From < upper.To)
        {
            stretches[first] = upper;
        }
    }

    private void MakeRoom()
    {
        if (count > stretches.Length)
        {
            Array.Resize(ref stretches, 2 * count);
        }
    }
}
