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
    private const double CloseInQuality = 0.05;

    /// <summary>No set has more.</summary>
    private const double MostQuality = 1;

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
        finder = Finder.Of(PurchaseSpace.Of(problem, candidacy, budget));
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

    private Plan Solve() => DemandsAreCandidates() && AnyAllowed() is { } any ? Best(any) : Infeasible();

    private bool DemandsAreCandidates()
    {
        var candidates = candidacy.Candidates.Select(item => item.Id).ToHashSet();
        return problem.Demands.MustInclude.All(candidates.Contains);
    }

    /// <summary>Some allowed set: to buy nothing, if that is one; null if it is proved that there is none.</summary>
    private Standing? AnyAllowed()
    {
        if (headStart is { } start)
        {
            finder.Remember(start.Purchases);
            return Standing.Of(problem, start.Purchases, isProved: false);
        }

        var nothing = Kit.Of(problem, []);
        if (!Breaches.Of(nothing).Any())
        {
            return new Standing(nothing, IsProved: false);
        }

        var answer = finder.Any(Question.Anything);
        return answer.Purchases is { } purchases ? Standing.Of(problem, purchases, isProved: false)
            : answer.IsDecided ? null
            : throw new WorkLimitException("The work limit ended before any allowed set of purchases was found.");
    }

    private Plan Best(Standing any)
    {
        var first = LeastStep(any);
        var values = new StageValues(new Step(first.Least), new Step(first.Bound), LeastMeanExcess: 0, GreatestQuality: null, Preference: 0);
        var wished = Wished(Question.Anything.KeepingTo(values.LargestStepAllowed), first.Best);
        var second = LeastExcess(wished.Kept, wished.Known);
        values = values with { LeastMeanExcess = second.Least };
        var third = GreatestQuality(wished.Kept.WithExcessUpTo(values.MeanExcessAllowed), second.Best, values);
        values = values with { GreatestQuality = third.Greatest };
        var last = PreferenceStage.Run(finder, third.Kept, third.Known);

        var isProved = first.Best.IsProved && wished.IsDecided && second.Best.IsProved && third.Known.IsProved && last.IsProved;
        return new Plan
        {
            Outcome = !isProved ? Outcome.BestFound : last.Purchases.IsEmpty ? Outcome.NothingWorthwhile : Outcome.Optimal,
            Purchases = last.Purchases,
            Candidacy = candidacy,
            Values = values with { Preference = new PreferenceScore(problem).Of(last.Purchases) },
            Wish = wished.Wish,
            Limit = isProved ? null : LimitReached(),
        };
    }

    private LeastFigureResult LeastStep(Standing any) => LeastFigure.Find(
        finder,
        step => Question.Anything.KeepingTo(new Step(step)),
        kit => Step.Max(problem.EnoughStep, kit.FiguresIn(candidacy.Telescopes).LargestStep).Ln,
        Step.Max(headStart?.Bound ?? default, problem.EnoughStep).Ln,
        CloseInStep,
        any);

    /// <summary>The sets that go on, one of them, and whether the wish for a wide view is granted, if there is one.</summary>
    private (Question Kept, Standing Known, WideViewWish? Wish, bool IsDecided) Wished(Question kept, Standing known)
    {
        if (WideViewWish.TrueFieldWished(problem, candidacy.Candidates) is not { } field)
        {
            return (kept, known, null, true);
        }

        var granting = kept.WithField(field);
        if (FramingRule.Frames(known.Kit, field, telescopeIndex: null))
        {
            return (granting, known, new WideViewWish(field, Granted: true), true);
        }

        var answer = finder.Any(granting);
        return answer.Purchases is { } purchases
            ? (granting, Standing.Of(problem, purchases, isProved: false), new WideViewWish(field, Granted: true), true)
            : (kept, known, new WideViewWish(field, Granted: false), answer.IsDecided);
    }

    private LeastFigureResult LeastExcess(Question kept, Standing known) => LeastFigure.Find(
        finder, kept.WithExcessUpTo, kit => kit.FiguresIn(candidacy.Telescopes).MeanExcess, floor: 0, CloseInExcess, known);

    /// <summary>The greatest quality, the sets that go on, and one of them; where only the price is preferred, all go on.</summary>
    private (double? Greatest, Question Kept, Standing Known) GreatestQuality(Question kept, Standing known, StageValues values)
    {
        if (problem.Preferences.Prefer == Prefer.LowPrice)
        {
            return (null, kept, known with { IsProved = true });
        }

        var measure = QualityMeasure.Of(problem, candidacy.Telescopes, values.LargestStepAllowed);
        var found = LeastFigure.Find(
            finder, lack => kept.WithQualityFrom(measure, -lack), kit => -measure.Of(kit), -MostQuality, CloseInQuality, known);
        var greatest = -found.Least;
        return (greatest, kept.WithQualityFrom(measure, greatest - StageValues.QualityLeeway), found.Best);
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
