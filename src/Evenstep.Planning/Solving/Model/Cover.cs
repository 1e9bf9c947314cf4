using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// Finds the places of an axis where covering it is decided. Between two neighbouring ends of stretches the stretches
/// that cover a place do not change, and where one more begins it only gets easier: so a choice of stretches covers the
/// whole axis if it covers every place that lies just after a stretch has ended and just before the next begins.
/// </summary>
internal static class Cover
{
    /// <summary>For each such place the stretches that cover it, as indices. None for a place that one marked certain covers.</summary>
    /// <param name="stretches">Closed; may reach beyond the axis.</param>
    /// <param name="isCertain">Whether a stretch is there whatever is chosen.</param>
    /// <param name="length">The axis goes from 0 to here.</param>
    public static IEnumerable<int[]> Places(IReadOnlyList<Reach> stretches, Func<int, bool> isCertain, double length)
    {
        var covering = new SortedSet<int>();
        var certain = 0;
        var shrunk = true;
        foreach (var (at, isEnd, index) in Events(stretches, length))
        {
            if (isEnd)
            {
                covering.Remove(index);
                certain -= isCertain(index) ? 1 : 0;
                shrunk = true;
                continue;
            }

            if (shrunk && certain == 0 && at > 0)
            {
                yield return [.. covering];
            }

            covering.Add(index);
            certain += isCertain(index) ? 1 : 0;
            shrunk = shrunk && at <= 0;
        }

        if (shrunk && certain == 0)
        {
            yield return [.. covering];
        }
    }

    /// <summary>Beginnings and ends along the axis; where both meet, the beginning first, for stretches are closed.</summary>
    private static List<(double At, bool IsEnd, int Index)> Events(IReadOnlyList<Reach> stretches, double length)
    {
        List<(double At, bool IsEnd, int Index)> events = [];
        for (var i = 0; i < stretches.Count; i++)
        {
            var (from, to) = (stretches[i].From, stretches[i].To);
            if (to < 0 || from > length || from > to)
            {
                continue;
            }

            events.Add((Math.Max(from, 0), false, i));
            if (to < length)
            {
                events.Add((to, true, i));
            }
        }

        events.Sort();
        return events;
    }
}
