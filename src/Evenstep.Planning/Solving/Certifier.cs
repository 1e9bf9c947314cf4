using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving;

/// <summary>
/// A second opinion on a proved plan: the constraint model is asked, stage by stage, for anything better than what the
/// plan claims. It need not find the best set again, only show that there is none better, which takes it less time.
/// </summary>
public sealed class Certifier
{
    /// <summary>Values closer than this are the same: each engine's own tolerance may stand between them.</summary>
    private const double Margin = 4 * Tolerance.Value;

    private readonly Plan plan;
    private readonly StageValues values;
    private readonly Finder finder;
    private readonly Question allowed;

    private Certifier(Plan plan, StageValues values, Finder finder, Question allowed)
    {
        this.plan = plan;
        this.values = values;
        this.finder = finder;
        this.allowed = allowed;
    }

    private PurchaseProblem Problem => finder.Problem;

    /// <summary>True if nothing better exists, or nothing is allowed as the plan says; false if something does, so that one of
    /// the two engines is wrong; null if a limit came first, or the plan claims no proof.</summary>
    /// <param name="problem">What was planned.</param>
    /// <param name="plan">What came of it.</param>
    /// <param name="budget">The work and memory that it may take.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static bool? Certify(PurchaseProblem problem, Plan plan, WorkBudget budget)
    {
        budget.Look();
        if (!plan.IsProved || budget.IsSpent)
        {
            return null;
        }

        var candidates = Candidacy.Of(problem).Candidates;
        if (!problem.Demands.MustInclude.All(candidates.Select(item => item.Id).ToHashSet().Contains))
        {
            return plan.Values is null;
        }

        var finder = Finder.Of(PurchaseSpace.Of(problem, candidates, budget));
        var wished = Question.Anything.WithField(plan.Wish?.TrueFieldDeg);
        if (plan.Values is not { } values)
        {
            return HasNone(finder, Question.Anything);
        }

        return plan.Wish is { Granted: false }
            ? All(() => HasNone(finder, wished), new Certifier(plan, values, finder, Question.Anything).NothingIsBetter)
            : new Certifier(plan, values, finder, wished).NothingIsBetter();
    }

    private bool? NothingIsBetter() => All(NoSmallerStep, NoLessExcess, NothingPreferred, NothingCheaper);

    private bool? NoSmallerStep() => values.LnLeastLargestStep <= (2 * Problem.EnoughMismatch) + Margin
        ? true
        : HasNone(finder, allowed.KeepingTo(values.LnLeastLargestStep - Margin));

    private bool? NoLessExcess() => values.LeastMeanExcess <= Margin
        ? true
        : HasNone(finder, Kept(values.LeastMeanExcess - Margin));

    private bool? NothingPreferred()
    {
        if (Problem.Preferences.Prefer == Prefer.LowPrice)
        {
            return true;
        }

        var preference = Measure.PreferenceOf(Problem);
        return HasNone(finder, Kept(values.MeanExcessAllowed).Below(preference, preference.Of(plan.Purchases) - 1));
    }

    private bool? NothingCheaper()
    {
        var preference = Measure.PreferenceOf(Problem);
        var question = Kept(values.MeanExcessAllowed) with { MostTotalPrice = plan.Purchases.Sum(item => item.ExactPrice) };
        question = Problem.Preferences.Prefer == Prefer.LowPrice ? question : question.Below(preference, preference.Of(plan.Purchases));
        return HasNone(finder, question.Below(Measure.PriceThenCount, Measure.PriceThenCount.Of(plan.Purchases) - 1));
    }

    private Question Kept(double excess) => allowed.KeepingTo(values.LnLargestStepAllowed).WithExcessUpTo(excess);

    /// <summary>Where sets of Barlows are too many for a proof, none is begun.</summary>
    private static bool? HasNone(Finder finder, Question question) =>
        !finder.CanDecide(question) ? null
        : finder.Any(question) is { Purchases: null } answer ? (answer.IsDecided ? true : null)
        : false;

    private static bool? All(params Func<bool?>[] questions)
    {
        foreach (var question in questions)
        {
            if (question() is not true and var answer)
            {
                return answer;
            }
        }

        return true;
    }
}
