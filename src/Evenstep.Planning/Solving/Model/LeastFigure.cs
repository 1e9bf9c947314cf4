using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>What a stage found.</summary>
/// <param name="Best">A set with the least figure known.</param>
/// <param name="Least">Its figure.</param>
/// <param name="Bound">No set has less; the same as <paramref name="Least"/> where that is proved.</param>
internal sealed record LeastFigureResult(Standing Best, double Least, double Bound);

/// <summary>
/// Finds the set whose largest step, mean excess or lack of quality is least. With one set of Barlows after another the best known is
/// undercut until nothing undercuts it; far from the bound, half the distance is tried at once.
/// </summary>
internal sealed class LeastFigure
{
    private readonly Finder finder;
    private readonly Func<double, Question> keepingTo;
    private readonly Func<Kit, double> figureOf;
    private readonly double floor;
    private readonly double close;
    private Standing best;

    private LeastFigure(Finder finder, Func<double, Question> keepingTo, Func<Kit, double> figureOf, double floor, double close, Standing known)
    {
        (this.finder, this.keepingTo, this.figureOf, this.floor, this.close) = (finder, keepingTo, figureOf, floor, close);
        best = known;
    }

    private double Value => figureOf(best.Kit);

    /// <param name="finder">Whom to ask.</param>
    /// <param name="keepingTo">The question for sets with at most such a figure.</param>
    /// <param name="figureOf">The figure of a set.</param>
    /// <param name="floor">A bound that is proved already.</param>
    /// <param name="close">While value and bound are farther apart than this, the middle is tried.</param>
    /// <param name="known">An allowed set.</param>
    public static LeastFigureResult Find(
        Finder finder, Func<double, Question> keepingTo, Func<Kit, double> figureOf, double floor, double close, Standing known) =>
        new LeastFigure(finder, keepingTo, figureOf, floor, close, known).Search();

    private LeastFigureResult Search()
    {
        var bound = finder.IsComplete ? double.PositiveInfinity : floor;
        foreach (var barlows in finder.Sets)
        {
            bound = Math.Min(bound, Undercut(barlows));
            if (finder.IsSpent)
            {
                bound = Math.Min(bound, floor);
                break;
            }
        }

        var isProved = Tolerance.AtMost(Value, bound);
        return new LeastFigureResult(best with { IsProved = isProved }, Value, isProved ? Value : Math.Max(floor, bound));
    }

    /// <summary>A bound on what sets with these Barlows have, or have no less than the best known.</summary>
    private double Undercut(ImmutableArray<Choice> barlows)
    {
        var (bound, isFromHere) = (floor, false);
        while (Tolerance.Above(Value, bound))
        {
            var halves = isFromHere && Value - bound > close;
            var threshold = halves ? (Value + bound) / 2 : Math.Max(floor, Value - (2 * Tolerance.Value));
            var answer = finder.With(barlows, keepingTo(threshold));
            if (answer.Purchases is { } purchases)
            {
                (best, isFromHere) = (Standing.Of(finder.Problem, purchases, isProved: false), true);
            }
            else if (answer.IsNone)
            {
                bound = halves ? threshold : Value;
            }
            else
            {
                break;
            }
        }

        return bound;
    }
}
