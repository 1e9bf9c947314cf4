using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>
/// What of one telescope needs something and gets no good view from a set, at each level of quality, and what further views
/// would gain. The definitions are those of <see cref="QualityMeasure"/>.
/// </summary>
internal sealed class QualityGaps
{
    private readonly QualityMeasure measure;
    private readonly double weight;

    /// <summary>At each level the stretches that are left.</summary>
    private readonly List<Reach>[] left;

    private QualityGaps(QualityMeasure measure, double weight, List<Reach>[] left) => (this.measure, this.weight, this.left) = (measure, weight, left);

    /// <summary>What this telescope adds to the quality of the set.</summary>
    public double Quality { get; private init; }

    /// <param name="measure">What needs something, and how near a view must be.</param>
    /// <param name="telescope">Its index.</param>
    /// <param name="views">Of the set, sorted by their beginnings.</param>
    public static QualityGaps Of(QualityMeasure measure, int telescope, ReadOnlySpan<RatedReach> views)
    {
        var (wanting, weight) = (measure.WantingIn(telescope), measure.WeightOf(telescope));
        var left = new List<Reach>[measure.Levels.Length];
        var quality = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            left[i] = [];
            foreach (var stretch in wanting)
            {
                quality += weight * Common(stretch, views, measure.Levels[i], measure.Radius, left[i]);
            }
        }

        return new QualityGaps(measure, weight, left) { Quality = quality };
    }

    /// <summary>How much more quality there is with these views too.</summary>
    /// <param name="views">Sorted by their beginnings.</param>
    public double Gain(ReadOnlySpan<RatedReach> views)
    {
        var gain = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            foreach (var stretch in left[i])
            {
                gain += weight * Common(stretch, views, measure.Levels[i], measure.Radius, left: null);
            }
        }

        return gain;
    }

    /// <summary>The length of what of a stretch lies near views of at least a level; what does not is noted.</summary>
    private static double Common(in Reach stretch, ReadOnlySpan<RatedReach> views, int level, double radius, List<Reach>? left)
    {
        var (common, reached) = (0.0, stretch.From);
        foreach (ref readonly var view in views)
        {
            var (from, to) = (Math.Max(reached, view.From - radius), Math.Min(stretch.To, view.To + radius));
            if (from >= stretch.To)
            {
                break;
            }

            if (view.Quality >= level && to > from)
            {
                if (from > reached)
                {
                    left?.Add(new Reach(reached, from));
                }

                common += to - from;
                reached = to;
            }
        }

        if (stretch.To > reached)
        {
            left?.Add(new Reach(reached, stretch.To));
        }

        return common;
    }
}
