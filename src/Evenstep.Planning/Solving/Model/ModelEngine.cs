using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>The constraint model as an engine: it finds the best set of purchases and proves it, stage by stage. The authority.</summary>
public sealed class ModelEngine
{
    /// <summary>While the bounds on a figure are farther apart than this the middle is asked, then whether anything is better at all.</summary>
    private const double CloseInStep = 0.05;
    private const double CloseInExcess = 0.02;

    private readonly PurchaseProblem problem;
    private readonly Candidacy candidacy;
    private readonly Finder finder;
    private readonly WorkBudget budget;
    private readonly HeadStart? headStart;

    private ModelEngine(PurchaseProblem problem, WorkBudget budget, HeadStart? headStart)
    {
        this.problem = problem;
        this.budget = budget;
        this.headStart = headStart;
        candidacy = Candidacy.Of(problem);
        finder = Finder.Of(PurchaseSpace.Of(problem, candidacy.Candidates, budget));
    }

    /// <summary>The plan for a problem: the same for the same problem, whatever the order of its items.</summary>
    /// <param name="problem">What to plan.</param>
    /// <param name="budget">The work and memory that it may take.</param>
    /// <param name="headStart">What another engine found before its own limit came.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    /// <exception cref="WorkLimitException">A limit ended the work before any allowed set was found, and before it was proved
    /// that there is none.</exception>
    public static Plan Solve(PurchaseProblem problem, WorkBudget budget, HeadStart? headStart = null)
    {
        budget.Look();
        return new ModelEngine(problem, budget, headStart).Solve();
    }

    private Plan Solve()
    {
        if (!DemandsAreCandidates())
        {
            return Infeasible();
        }

        var wish = WideViewWish.TrueFieldWished(problem, candidacy.Candidates);
        if (wish is { } field && AnyAllowed(field) is { } granting)
        {
            return Best(granting, new WideViewWish(field, Granted: true));
        }

        return AnyAllowed(wishedFieldDeg: null) is { } any
            ? Best(any, wish is { } ungranted ? new WideViewWish(ungranted, Granted: false) : null)
            : Infeasible();
    }

    private bool DemandsAreCandidates()
    {
        var candidates = candidacy.Candidates.Select(item => item.Id).ToHashSet();
        return problem.Demands.MustInclude.All(candidates.Contains);
    }

    /// <summary>Some allowed set: to buy nothing, if that is one; null if it is proved that there is none.</summary>
    private Standing? AnyAllowed(double? wishedFieldDeg)
    {
        if (HeadStartFor(wishedFieldDeg) is { } start)
        {
            return Standing.Of(problem, start.Purchases, isProved: false);
        }

        var nothing = Kit.Of(problem, []);
        var isGranted = wishedFieldDeg is not { } field || FramingRule.Frames(nothing, field, telescopeIndex: null);
        if (isGranted && !Breaches.Of(nothing).Any())
        {
            return new Standing([], nothing.Figures, IsProved: false);
        }

        var answer = finder.Any(Question.Anything.WithField(wishedFieldDeg));
        return answer.Purchases is { } purchases ? Standing.Of(problem, purchases, isProved: false)
            : answer.IsDecided ? null
            : throw new WorkLimitException("The work limit ended before any allowed set of purchases was found.");
    }

    private HeadStart? HeadStartFor(double? wishedFieldDeg) => wishedFieldDeg is null ? headStart : null;

    private Plan Best(Standing any, WideViewWish? wish)
    {
        var wished = wish is { Granted: true } ? wish.TrueFieldDeg : (double?)null;
        var allowed = Question.Anything.WithField(wished);
        var first = LeastStep(allowed, any, HeadStartFor(wished)?.LnBound ?? 0);
        var values = new StageValues(first.Least, first.Bound, LeastMeanExcess: 0, GreatestQuality: null, Preference: 0);
        allowed = allowed.KeepingTo(values.LnLargestStepAllowed);
        var second = LeastFigure.Find(finder, allowed.WithExcessUpTo, figures => figures.MeanExcess, floor: 0, CloseInExcess, first.Best);
        values = values with { LeastMeanExcess = second.Least };
        var third = PreferenceStage.Run(finder, allowed.WithExcessUpTo(values.MeanExcessAllowed), second.Best);

        var isProved = first.Best.IsProved && second.Best.IsProved && third.IsProved;
        return new Plan
        {
            Outcome = !isProved ? Outcome.BestFound : third.Purchases.IsEmpty ? Outcome.NothingWorthwhile : Outcome.Optimal,
            Purchases = third.Purchases,
            Candidacy = candidacy,
            Values = values with { Preference = new PreferenceScore(problem).Of(third.Purchases) },
            Wish = wish,
            Limit = isProved ? null : LimitReached(),
        };
    }

    private LeastFigureResult LeastStep(Question allowed, Standing any, double lnBound)
    {
        var lnEnough = 2 * problem.EnoughMismatch;
        return LeastFigure.Find(
            finder, allowed.KeepingTo, figures => Math.Max(lnEnough, figures.LnLargestStep), Math.Max(lnBound, lnEnough), CloseInStep, any);
    }

    /// <summary>More sets of Barlows than can be looked at are too much work, known beforehand.</summary>
    private ReachedLimit? LimitReached() => budget.Reached ?? (finder.IsComplete ? null : ReachedLimit.Work);

    private Plan Infeasible() => new()
    {
        Outcome = Outcome.Infeasible,
        Purchases = [],
        Candidacy = candidacy,
        Conflicts = new Diagnosis(problem, candidacy, budget).Run(),
        Limit = budget.Reached,
    };
}
