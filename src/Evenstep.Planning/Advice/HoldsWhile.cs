using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Solves a problem within a budget.</summary>
/// <exception cref="WorkLimitException">The budget ended before any allowed set was found.</exception>
public delegate Plan SolveWithin(PurchaseProblem problem, WorkBudget budget);

/// <summary>How far a plan's purchases stay the best while one input changes.</summary>
/// <param name="From">The lowest value of the interval around the value given in which every value tried gives the same purchases.</param>
/// <param name="To">The highest.</param>
/// <param name="Tried">How many values were tried beside the one given: outwards from it, on each side up to the first that gives
/// other purchases.</param>
/// <param name="Below">The first value below that does; null if none was found.</param>
/// <param name="Above">The first value above that does; null if none was found.</param>
public sealed record HeldInterval(decimal From, decimal To, int Tried, ChangedPlan? Below, ChangedPlan? Above);

/// <summary>A value of an input that gives other purchases.</summary>
/// <param name="Value">The value.</param>
/// <param name="Plan">What comes of it; null where no power is left to plan for.</param>
public sealed record ChangedPlan(decimal Value, Plan? Plan);

/// <summary>For each of three inputs how far a plan's purchases stay the best. Each is null if the work did not suffice.</summary>
/// <param name="SeeingArcsec">In arcseconds.</param>
/// <param name="PupilMm">In mm: of the pupil that counts, given, of the age, or as it is taken where neither is known.</param>
/// <param name="Budget">In the catalogue's currency.</param>
public sealed record HoldsWhile(HeldInterval? SeeingArcsec, HeldInterval? PupilMm, HeldInterval? Budget)
{
    /// <summary>Between two values of the seeing, in arcseconds, or of the pupil, in mm.</summary>
    private const decimal Spacing = 0.1m;

    private const decimal FarthestPupilMm = 1.5m;
    private const decimal FarthestRatio = 2;

    /// <summary>Of the budget, from ten of them to forty.</summary>
    private const int BudgetParts = 20;

    /// <summary>Null where nothing is allowed.</summary>
    /// <param name="problem">What was planned.</param>
    /// <param name="plan">What came of it.</param>
    /// <param name="seeingArcsec">The seeing that the problem's power ranges were laid out for.</param>
    /// <param name="solve">Plans each changed problem.</param>
    /// <param name="budget">The work and memory that all of it may take, shared in equal parts: what one input leaves is for
    /// those after it.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static HoldsWhile? Of(PurchaseProblem problem, Plan plan, double seeingArcsec, SolveWithin solve, WorkBudget budget)
    {
        if (plan.Outcome == Outcome.Infeasible)
        {
            return null;
        }

        var (seeing, pupil) = ((decimal)seeingArcsec, (decimal)problem.Observer.DarkAdaptedPupilMm);
        return new HoldsWhile(
            Interval(
                3,
                seeing,
                SpacedFrom(seeing, seeing / FarthestRatio, seeing * FarthestRatio, Bounds.SeeingArcsec),
                value => LaidOut(problem, problem.Observer, (double)value)),
            Interval(
                2,
                pupil,
                SpacedFrom(pupil, pupil - FarthestPupilMm, pupil + FarthestPupilMm, Bounds.PupilMm),
                value => LaidOut(problem, problem.Observer with { PupilMm = (double)value }, seeingArcsec)),
            Interval(1, problem.Limits.Budget, Budgets(problem.Limits.Budget), value => problem with { Limits = problem.Limits with { Budget = value } }));

        HeldInterval? Interval(int sharers, decimal given, ImmutableArray<decimal> values, Func<decimal, PurchaseProblem?> changed) =>
            new IntervalSearch(plan, solve, budget.Part(budget.UnitsLeft / sharers)).Around(given, values, changed);
    }

    /// <summary>Steps of <see cref="Spacing"/> either way, as far as the bounds allow.</summary>
    private static ImmutableArray<decimal> SpacedFrom(decimal given, decimal least, decimal most, Bounds bounds)
    {
        var (low, high) = (Math.Max(least, (decimal)bounds.Least), Math.Min(most, (decimal)bounds.Most));
        var (below, above) = ((int)((given - low) / Spacing), (int)((high - given) / Spacing));
        return [.. Enumerable.Range(-below, below + above + 1).Select(k => given + (k * Spacing))];
    }

    /// <summary>Each twentieth from a half to twice, rounded down to cents.</summary>
    private static ImmutableArray<decimal> Budgets(decimal given) =>
    [
        .. Enumerable.Range(BudgetParts / 2, (BudgetParts * 3 / 2) + 1)
            .Select(part => part == BudgetParts ? given : decimal.Floor(given * part * 100 / BudgetParts) / 100)
            .Where(value => value <= (decimal)Bounds.Budget.Most)
            .Distinct(),
    ];

    /// <summary>The problem with its power ranges laid out anew; null if one of them is too narrow then.</summary>
    private static PurchaseProblem? LaidOut(PurchaseProblem problem, Observer observer, double seeingArcsec)
    {
        var ranges = problem.Telescopes.Select(one => PowerRange.Of(
            one.Telescope,
            observer,
            seeingArcsec,
            one.Range.LowestSetBy == RangeEnd.Request ? one.Range.Lowest : null,
            one.Range.HighestSetBy == RangeEnd.Request ? one.Range.Highest : null)).ToList();
        return !ranges.TrueForAll(range => range.IsWideEnough) ? null : problem with
        {
            Observer = observer,
            Telescopes = [.. problem.Telescopes.Zip(ranges, (one, range) => TelescopeInUse.Of(one.Telescope, range, observer.Observes))],
        };
    }
}
