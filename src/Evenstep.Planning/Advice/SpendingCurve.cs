using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// The spending curve: of a frontier the points that differ enough to be told apart. From the cheapest point on, a point is
/// kept if its largest step is narrower by 1 % or more than that of the last one kept; so every point left out stands closer
/// than that to a cheaper one that is kept, and every point kept is the best for its price.
/// </summary>
/// <param name="Points">The cheapest first. Empty if no set is allowed.</param>
/// <param name="SuggestedIndex">The place of the point to suggest; -1 if there is none.</param>
public sealed record SpendingCurve(ImmutableArray<SpendingPoint> Points, int SuggestedIndex)
{
    /// <summary>Largest steps in a ratio below this are as good as one: common practice, no source.</summary>
    public const double TellingRatio = 1.01;

    public static SpendingCurve Of(SpendingFrontier frontier)
    {
        var points = ToldApart(frontier.Points);
        return new SpendingCurve(points, KneeOf(points));
    }

    private static ImmutableArray<SpendingPoint> ToldApart(ImmutableArray<SpendingPoint> points)
    {
        List<SpendingPoint> kept = [];
        foreach (var point in points)
        {
            if (kept.Count == 0 || Tolerance.AtLeast(kept[^1].LnLargestStep - point.LnLargestStep, Math.Log(TellingRatio)))
            {
                kept.Add(point);
            }
        }

        return [.. kept];
    }

    /// <summary>
    /// The knee: with price and logarithm of the step each scaled to [0, 1], the point farthest below the chord from the first
    /// to the last; of equals the cheaper. Of one or two points the last.
    /// </summary>
    private static int KneeOf(ImmutableArray<SpendingPoint> points)
    {
        var knee = points.Length <= 2 ? points.Length - 1 : 0;
        for (var i = 1; points.Length > 2 && i < points.Length; i++)
        {
            knee = Tolerance.Above(BelowChord(points, i), BelowChord(points, knee)) ? i : knee;
        }

        return knee;
    }

    /// <summary>How far below the chord a point is, but for a factor that all points share.</summary>
    private static double BelowChord(ImmutableArray<SpendingPoint> points, int i)
    {
        var (first, last) = (points[0], points[^1]);
        var price = (double)((points[i].TotalPrice - first.TotalPrice) / (last.TotalPrice - first.TotalPrice));
        var step = (points[i].LnLargestStep - last.LnLargestStep) / (first.LnLargestStep - last.LnLargestStep);
        return 1 - price - step;
    }
}
