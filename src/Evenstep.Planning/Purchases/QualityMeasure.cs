using System.Collections.Immutable;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// How much of what needs something gets a good view. What needs something is what the views of the owned items alone do not
/// serve, for what they serve is not bought again for comfort. There a position has the greatest quality of the kit's usable
/// views within <see cref="Radius"/>, or 0; the measure is the integral of that over all such positions of all telescopes,
/// each telescope's in parts of its axis, over the whole of them, but at least half an axis a telescope. Of a kit it is from
/// 0 to 1, never falls where views are added, and what a view adds only shrinks as others are added.
/// </summary>
public sealed class QualityMeasure
{
    /// <summary>Of each telescope; empty where none of it counts.</summary>
    private readonly ImmutableArray<ImmutableArray<Reach>> wanting;
    private readonly ImmutableArray<double> weights;
    private readonly PurchaseProblem problem;

    private QualityMeasure(
        PurchaseProblem problem, double radius, ImmutableArray<ImmutableArray<Reach>> wanting, ImmutableArray<double> weights, ImmutableArray<int> levels)
    {
        (this.problem, Radius, this.wanting, this.weights, Levels) = (problem, radius, wanting, weights, levels);
    }

    /// <summary>How far, in position, from a view its quality counts: half the largest step that is allowed, or what counts as served.</summary>
    public double Radius { get; }

    /// <summary>The qualities above 0 that count, in quarters, ascending; each weighs as much as any other.</summary>
    public ImmutableArray<int> Levels { get; }

    /// <summary>The measure for a problem.</summary>
    /// <param name="problem">Its preference decides what is good.</param>
    /// <param name="telescopes">The telescopes that count, by their indices.</param>
    /// <param name="largestStepAllowed">The largest step that the first stage allows.</param>
    public static QualityMeasure Of(PurchaseProblem problem, ImmutableArray<int> telescopes, Step largestStepAllowed)
    {
        var owned = Kit.Of(problem, []);
        ImmutableArray<ImmutableArray<Reach>> wanting =
            [.. owned.Ladders.Select((ladder, t) => telescopes.Contains(t) ? WantingIn(ladder, problem.MismatchLimits.Served) : [])];
        var shares = telescopes.Sum(t => Stretches.LengthOf(wanting[t]) / problem.Telescopes[t].Axis.Length);
        var whole = Math.Max(shares, telescopes.Length / 2.0);
        var levels = Quality.Levels(problem.Preferences.Prefer);
        return new QualityMeasure(
            problem,
            Math.Max(problem.MismatchLimits.Served, largestStepAllowed.Half),
            wanting,
            [.. problem.Telescopes.Select(telescope => 1 / (telescope.Axis.Length * whole * levels.Length))],
            levels);
    }

    /// <summary>The positions of a telescope that need something.</summary>
    public ImmutableArray<Reach> WantingIn(int telescope) => wanting[telescope];

    /// <summary>What a unit of position of a telescope weighs, at one level.</summary>
    public double WeightOf(int telescope) => weights[telescope];

    /// <summary>The measure of a kit.</summary>
    public double Of(Kit kit)
    {
        var sum = 0.0;
        for (var t = 0; t < wanting.Length; t++)
        {
            foreach (var level in Levels)
            {
                Reach[] good = [.. kit.Ladders[t].Usable.Where(view => view.Showing.Quality >= level).Select(view => view.Reach)];
                sum += weights[t] * Stretches.LengthOfCommon(wanting[t], Stretches.Near(good, Radius, problem.Telescopes[t].Axis.Length));
            }
        }

        return sum;
    }

    private static ImmutableArray<Reach> WantingIn(Ladder ladder, double served)
    {
        var length = ladder.Telescope.Axis.Length;
        return Stretches.Outside(Stretches.Near([.. ladder.Usable.Select(view => view.Reach)], served, length), length);
    }
}
