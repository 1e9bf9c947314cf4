using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// The spending curve: what every sum buys at best, in largest steps. What is enough ends it: of steps that are, the cheapest is
/// the last point.
/// </summary>
/// <param name="Points">The cheapest first. Empty if no set is allowed.</param>
/// <param name="SuggestedIndex">The index of the point to suggest; -1 if there is none.</param>
public sealed record SpendingCurve(ImmutableArray<SpendingPoint> Points, int SuggestedIndex)
{
    /// <summary>A point less far below the chord than this is no knee: common practice, no source.</summary>
    public const double LeastDepth = 0.05;

    public static SpendingCurve Of(SpendingFrontier frontier)
    {
        var points = UpToEnough(frontier);
        if (points.Length < 2)
        {
            return new SpendingCurve(points, points.Length - 1);
        }

        var telescopes = Candidacy.Of(frontier.Problem).Telescopes;
        return new SpendingCurve(points, SuggestedOf(points, [.. points.Select(point => NotServed(point, frontier.Problem, telescopes))]));
    }

    /// <summary>
    /// The knee: with price and the share not served each scaled to [0, 1] from the first point's to the last's, the point
    /// farthest below the chord from first to last; of equals the cheaper. The last, if no point is <see cref="LeastDepth"/>
    /// below the chord, or the last serves no more than the first.
    /// </summary>
    /// <param name="points">At least two.</param>
    /// <param name="notServed">The share, 0 to 1, that each does not serve.</param>
    internal static int SuggestedOf(ImmutableArray<SpendingPoint> points, ImmutableArray<double> notServed)
    {
        var (last, gain) = (points.Length - 1, notServed[0] - notServed[^1]);
        if (!Tolerance.Above(gain, 0))
        {
            return last;
        }

        var (knee, greatest) = (last, 0.0);
        for (var i = 0; i < last; i++)
        {
            var depth = BelowChord(i);
            if (Tolerance.Above(depth, greatest))
            {
                (knee, greatest) = (i, depth);
            }
        }

        return Tolerance.AtLeast(greatest, LeastDepth) ? knee : last;

        double BelowChord(int i) => 1 - ((notServed[i] - notServed[^1]) / gain)
            - (double)((points[i].TotalPrice - points[0].TotalPrice) / (points[^1].TotalPrice - points[0].TotalPrice));
    }

    private static ImmutableArray<SpendingPoint> UpToEnough(SpendingFrontier frontier)
    {
        var enough = frontier.Problem.EnoughStep;
        var first = frontier.Points.ToList().FindIndex(point => point.LargestStep.AtMost(enough));
        return first < 0 ? frontier.Points : frontier.Points[..(first + 1)];
    }

    private static double NotServed(SpendingPoint point, PurchaseProblem problem, ImmutableArray<int> telescopes) =>
        1 - Kit.Of(problem, point.Purchases).FiguresIn(telescopes).ServedShare;
}
