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
        (double From, double To)[] there =
            [.. without.Usable.Select(view => (view.View.Power, view.View.PowerAtShortest)).OrderBy(stretch => stretch.Power)];
        return [.. added.SelectMany(view => NewIn(view, without.Telescope.Range, there))];
    }

    private static IEnumerable<AddedPowers> NewIn(KitView view, PowerRange range, (double From, double To)[] there)
    {
        if (!view.View.IsZoom)
        {
            var power = view.View.Power;
            var isThere = there.Any(stretch => !IsBelow(power, stretch.From) && !IsBelow(stretch.To, power));
            return isThere || IsBelow(power, range.Lowest) || IsBelow(range.Highest, power) ? [] : [new AddedPowers(view.Eyepiece, power, null)];
        }

        var (from, to) = (Math.Max(view.View.Power, range.Lowest), Math.Min(view.View.PowerAtShortest, range.Highest));
        return Gaps(from, to, there.Where(stretch => IsBelow(stretch.From, stretch.To))).Select(gap => new AddedPowers(view.Eyepiece, gap.From, gap.To));
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

    private static bool IsBelow(double power, double other) => RemarkValue.Power("", power).ReadsBelow(RemarkValue.Power("", other));
}
