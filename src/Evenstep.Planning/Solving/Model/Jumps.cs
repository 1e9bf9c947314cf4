using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// A stretch of positions that a kit might leave without a view, more than good enough would be: between two possible
/// views, or (a null) between one and an end of the axis, or the whole of it.
/// </summary>
/// <param name="Below">The view before the jump, or null at the low end.</param>
/// <param name="Above">The view after it, or null at the high end.</param>
/// <param name="Span">From view to view.</param>
/// <param name="Excess">What it adds to the kit's mean excess.</param>
internal sealed record PossibleJump(PossibleView? Below, PossibleView? Above, Reach Span, double Excess)
{
    /// <summary>The part of it that is not good enough.</summary>
    public Reach Unserved(double enough) =>
        new(Below is null ? double.NegativeInfinity : Span.From + enough, Above is null ? double.PositiveInfinity : Span.To - enough);
}

/// <summary>Finds the jumps of one telescope that could be in a set worth looking at.</summary>
internal sealed class Jumps(PossibleViews views, double enough, int telescopes)
{
    private readonly double length = views.Telescope.Axis.Length;
    private readonly double[] certain = [.. views.All.Where(view => view.IsCertain).Select(view => view.Reach.From).Order()];

    /// <summary>The mean excess that stays even with every possible view: no kit's is less.</summary>
    public double LeastExcess() =>
        LadderFigures.Of(views.All.Select(view => view.Reach), length, enough).MeanExcess / telescopes;

    /// <summary>Every jump of more than what is enough that keeps to the largest step and adds at most so much excess.</summary>
    public IEnumerable<PossibleJump> UpTo(double lnLargestStep, double mostExcess)
    {
        if (Tolerance.AtMost(2 * length, lnLargestStep))
        {
            yield return new PossibleJump(null, null, new Reach(0, length), Math.Max(0, length - enough) / telescopes);
        }

        PossibleView[] byFrom = [.. views.All.OrderBy(view => view.Reach.From)];
        foreach (var jump in AtEnds(byFrom, lnLargestStep).Concat(Between(byFrom, lnLargestStep)))
        {
            if (Tolerance.AtMost(jump.Excess, mostExcess))
            {
                yield return jump;
            }
        }
    }

    private IEnumerable<PossibleJump> AtEnds(PossibleView[] byFrom, double lnLargestStep)
    {
        foreach (var view in byFrom)
        {
            var (low, high) = (view.Reach.From, length - view.Reach.To);
            if (low > enough && Tolerance.AtMost(2 * low, lnLargestStep) && !HoldsCertainView(double.NegativeInfinity, low))
            {
                yield return new PossibleJump(null, view, new Reach(0, low), ExcessOfSide(low));
            }

            if (high > enough && Tolerance.AtMost(2 * high, lnLargestStep) && !HoldsCertainView(view.Reach.To, double.PositiveInfinity))
            {
                yield return new PossibleJump(view, null, new Reach(view.Reach.To, length), ExcessOfSide(high));
            }
        }
    }

    private IEnumerable<PossibleJump> Between(PossibleView[] byFrom, double lnLargestStep)
    {
        double[] froms = [.. byFrom.Select(view => view.Reach.From)];
        foreach (var below in byFrom)
        {
            var to = below.Reach.To;
            var first = Array.BinarySearch(froms, to + (2 * enough));
            for (var i = first < 0 ? ~first : first; i < froms.Length && Tolerance.AtMost(froms[i] - to, lnLargestStep); i++)
            {
                if (HoldsCertainView(to, froms[i]))
                {
                    break;
                }

                yield return new PossibleJump(below, byFrom[i], new Reach(to, froms[i]), 2 * ExcessOfSide((froms[i] - to) / 2));
            }
        }
    }

    /// <summary>A jump over a view that is there anyhow is none.</summary>
    private bool HoldsCertainView(double from, double to)
    {
        var index = Array.BinarySearch(certain, from + Tolerance.Value);
        index = index < 0 ? ~index : index;
        return index < certain.Length && certain[index] < to - Tolerance.Value;
    }

    private double ExcessOfSide(double side)
    {
        var over = Math.Max(0, side - enough);
        return over * over / 2 / length / telescopes;
    }
}
