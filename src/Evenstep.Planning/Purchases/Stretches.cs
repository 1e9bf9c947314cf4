using System.Collections.Immutable;

namespace Evenstep.Planning.Purchases;

/// <summary>Sets of positions of one axis, as stretches in ascending order that do not touch.</summary>
internal static class Stretches
{
    /// <summary>The positions of an axis from 0 to its length that lie within a distance of some reach, which are sorted here.</summary>
    public static ImmutableArray<Reach> Near(Span<Reach> reaches, double distance, double length)
    {
        if (reaches.IsEmpty)
        {
            return [];
        }

        reaches.Sort(static (a, b) => a.From.CompareTo(b.From));
        var near = ImmutableArray.CreateBuilder<Reach>();
        var open = Widened(reaches[0]);
        foreach (var reach in reaches[1..])
        {
            var next = Widened(reach);
            if (next.From <= open.To)
            {
                open = new Reach(open.From, Math.Max(open.To, next.To));
            }
            else
            {
                near.Add(open);
                open = next;
            }
        }

        near.Add(open);
        return near.ToImmutable();

        Reach Widened(Reach reach) => new(Math.Max(0, reach.From - distance), Math.Min(length, reach.To + distance));
    }

    /// <summary>What of an axis from 0 to its length lies outside of all stretches.</summary>
    public static ImmutableArray<Reach> Outside(ImmutableArray<Reach> stretches, double length)
    {
        var outside = ImmutableArray.CreateBuilder<Reach>();
        var reached = 0.0;
        foreach (var stretch in stretches)
        {
            if (stretch.From > reached)
            {
                outside.Add(new Reach(reached, stretch.From));
            }

            reached = Math.Max(reached, stretch.To);
        }

        if (length > reached)
        {
            outside.Add(new Reach(reached, length));
        }

        return outside.ToImmutable();
    }

    /// <summary>The length of what lies in one of the first and one of the second.</summary>
    public static double LengthOfCommon(ImmutableArray<Reach> first, ImmutableArray<Reach> second)
    {
        var length = 0.0;
        for (int i = 0, j = 0; i < first.Length && j < second.Length;)
        {
            length += Math.Max(0, Math.Min(first[i].To, second[j].To) - Math.Max(first[i].From, second[j].From));
            (i, j) = first[i].To < second[j].To ? (i + 1, j) : (i, j + 1);
        }

        return length;
    }

    public static double LengthOf(ImmutableArray<Reach> stretches)
    {
        var length = 0.0;
        foreach (var stretch in stretches)
        {
            length += stretch.To - stretch.From;
        }

        return length;
    }
}
