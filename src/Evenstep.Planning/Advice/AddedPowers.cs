using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>A useful power, or a stretch of them, that views give with a Barlow and nothing gives without it.</summary>
/// <param name="Eyepiece">What is looked into.</param>
/// <param name="From">The power, or the lowest of the stretch.</param>
/// <param name="To">The highest of the stretch; null for a single power.</param>
internal sealed record AddedPowers(Item Eyepiece, double From, double? To)
{
    /// <summary>By power; cut to the range, and none where all are there without it. Powers that read alike are the same.</summary>
    /// <param name="added">The usable views that need the Barlow.</param>
    /// <param name="without">What there is without it.</param>
    public static ImmutableArray<AddedPowers> Of(IEnumerable<KitView> added, Ladder without)
    {
        var single = without.Usable.Where(view => !view.View.IsZoom).Select(view => Read(view.View.Power)).ToHashSet();
        var stretches = Merged(without.Usable.Where(view => view.View.IsZoom).Select(view => (view.View.Power, view.View.PowerAtShortest)));
        return [.. added.SelectMany(view => NewIn(view, without.Telescope.Range, single, stretches))];
    }

    /// <summary>Stretches in order, those that overlap as one: a large kit has thousands.</summary>
    private static List<(double From, double To)> Merged(IEnumerable<(double From, double To)> stretches)
    {
        List<(double From, double To)> merged = [];
        foreach (var stretch in stretches.OrderBy(one => one.From))
        {
            if (merged.Count > 0 && stretch.From <= merged[^1].To)
            {
                merged[^1] = (merged[^1].From, Math.Max(merged[^1].To, stretch.To));
            }
            else
            {
                merged.Add(stretch);
            }
        }

        return merged;
    }

    private static IEnumerable<AddedPowers> NewIn(
        KitView view, PowerRange range, HashSet<double> single, List<(double From, double To)> stretches)
    {
        if (!view.View.IsZoom)
        {
            var power = view.View.Power;
            var isThere = single.Contains(Read(power)) || stretches.Exists(stretch => !IsBelow(power, stretch.From) && !IsBelow(stretch.To, power));
            return isThere || IsBelow(power, range.Lowest) || IsBelow(range.Highest, power) ? [] : [new AddedPowers(view.Eyepiece, power, null)];
        }

        var (from, to) = (Math.Max(view.View.Power, range.Lowest), Math.Min(view.View.PowerAtShortest, range.Highest));
        return Gaps(from, to, stretches).Select(gap => new AddedPowers(view.Eyepiece, gap.From, gap.To));
    }

    /// <summary>What stretches, in the order of where they begin, leave of one.</summary>
    private static IEnumerable<(double From, double To)> Gaps(double from, double to, IEnumerable<(double From, double To)> stretches)
    {
        foreach (var stretch in stretches)
        {
            if (IsBelow(from, Math.Min(stretch.From, to)))
            {
                yield return (from, Math.Min(stretch.From, to));
            }

            from = Math.Max(from, stretch.To);
        }

        if (IsBelow(from, to))
        {
            yield return (from, to);
        }
    }

    private static bool IsBelow(double power, double other) => Read(power) < Read(other);

    private static double Read(double power) => RemarkValue.Rounded(power, 1);
}
