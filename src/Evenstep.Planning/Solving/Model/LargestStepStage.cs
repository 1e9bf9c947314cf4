using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>What the first stage found.</summary>
/// <param name="Best">A set with the least largest step.</param>
/// <param name="LnLeast">The least logarithm of the largest step, or of the step that is enough where that is larger.</param>
/// <param name="LnBound">A proven lower bound on it.</param>
internal sealed record LargestStepResult(Standing Best, double LnLeast, double LnBound);

/// <summary>
/// Finds the least largest step by asking of one threshold after another whether any allowed set keeps to it. A set keeps
/// to a threshold if its views, each widened by half of it on both sides, cover the axis: plain clauses over the views
/// that could cover each place, and exact, for the positions are compared as they are and nothing is scaled.
/// </summary>
internal sealed class LargestStepStage
{
    /// <summary>While the bounds are farther apart than this the middle is asked, then whether anything is better at all.</summary>
    private const double Close = 0.05;

    private readonly PurchaseModel model;
    private readonly Work work;
    private readonly PurchaseProblem problem;
    private Standing best;
    private double bound;

    private LargestStepStage(PurchaseModel model, Work work, Standing any, double lnBound)
    {
        this.model = model;
        this.work = work;
        problem = model.Problem;
        best = any;
        bound = Math.Max(Math.Max(lnBound, 2 * problem.EnoughMismatch), LnStepWithEverything());
    }

    private double Value => Math.Max(2 * problem.EnoughMismatch, best.Figures.LnLargestStep);

    /// <summary>Goes on from an allowed set and a lower bound that is proved already (0 if none is).</summary>
    public static LargestStepResult Run(PurchaseModel model, Work work, Standing any, double lnBound) =>
        new LargestStepStage(model, work, any, lnBound).Search();

    private LargestStepResult Search()
    {
        var threshold = bound;
        while (Tolerance.Above(Value, bound))
        {
            var verdict = KeepingTo(threshold, model, work);
            if (verdict.Purchases is { } purchases)
            {
                Take(purchases, threshold);
            }
            else if (verdict.IsImpossible)
            {
                bound = Math.Clamp(NextStepAbove(threshold), bound, Value);
            }
            else
            {
                return new LargestStepResult(best, Value, bound);
            }

            threshold = Value - bound > Close ? (Value + bound) / 2 : Value - (2 * Tolerance.Value);
        }

        return new LargestStepResult(best with { IsProved = true }, Value, Value);
    }

    private void Take(ImmutableArray<Item> purchases, double threshold)
    {
        best = Standing.Of(problem, purchases, isProved: false);
        if (Value > threshold + (2 * Tolerance.Value))
        {
            throw new InvalidOperationException($"A set said to keep to {threshold:R} has {Value:R}.");
        }
    }

    /// <summary>Some set whose largest step has at most this logarithm.</summary>
    public static Verdict KeepingTo(double lnStep, PurchaseModel model, Work work) => model.Temporarily(() =>
    {
        foreach (var views in model.Space.Telescopes.Where(views => Tolerance.Above(2 * views.Telescope.Axis.Length, lnStep)))
        {
            var reach = (lnStep + Tolerance.Value) / 2;
            var widened = views.All.Select(view => new Reach(view.Reach.From - reach, view.Reach.To + reach)).ToArray();
            foreach (var place in Cover.Places(widened, index => views.All[index].IsCertain, views.Telescope.Axis.Length))
            {
                model.Cp.AddBoolOr(place.Select(index => model.Exists(views.All[index])));
            }
        }

        return work.Find(model);
    });

    /// <summary>No set does better than all purchases together would.</summary>
    private double LnStepWithEverything() => model.Space.Telescopes.Max(views =>
        LadderFigures.Of(views.All.Select(view => view.Reach), views.Telescope.Axis.Length, problem.EnoughMismatch).LnLargestStep);

    /// <summary>The least step above a threshold that any kit can have: between two views, between a view and an end, or
    /// with no view at all.</summary>
    private double NextStepAbove(double threshold) => model.Space.Telescopes.Min(views => NextStepAbove(threshold, views));

    private static double NextStepAbove(double threshold, PossibleViews views)
    {
        var length = views.Telescope.Axis.Length;
        double[] froms = [.. views.All.Select(view => view.Reach.From).Order()];
        var least = Above(2 * length);
        foreach (var (from, to) in views.All.Select(view => view.Reach))
        {
            var beyond = Array.BinarySearch(froms, to + threshold + Tolerance.Value);
            beyond = beyond < 0 ? ~beyond : beyond;
            var next = beyond < froms.Length ? Above(froms[beyond] - to) : double.PositiveInfinity;
            least = Math.Min(least, Math.Min(next, Math.Min(Above(2 * from), Above(2 * (length - to)))));
        }

        return least;

        double Above(double step) => Tolerance.Above(step, threshold) ? step : double.PositiveInfinity;
    }
}
