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

    private Certifier(Plan plan, StageValues values, Finder finder)
    {
        this.plan = plan;
        this.values = values;
        this.finder = finder;
    }

    private PurchaseProblem Problem => finder.Problem;

    private QualityMeasure Quality => field ??= QualityMeasure.Of(Problem, finder.Telescopes, values.LargestStepAllowed);

    /// <summary>What the first stage keeps.</summary>
    private Question Kept => Question.Anything.KeepingTo(values.LargestStepAllowed);

    private Question KeptAndWished => plan.Wish is { Granted: true } wish ? Kept.WithField(wish.TrueFieldDeg) : Kept;

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

        var candidacy = Candidacy.Of(problem);
        if (!problem.Demands.MustInclude.All(candidacy.Candidates.Select(item => item.Id).ToHashSet().Contains))
        {
            return plan.Values is null;
        }

        var finder = Finder.Of(PurchaseSpace.Of(problem, candidacy, budget));
        finder.Remember(plan.Purchases);
        return plan.Values is not { } values ? HasNone(finder, Question.Anything)
            : !IsWish(plan.Wish, WideViewWish.TrueFieldWished(problem, candidacy.Candidates)) ? false
            : new Certifier(plan, values, finder).NothingIsBetter();
    }

    /// <summary>Whether a plan tells of the wish that there is, or of none if there is none.</summary>
    private static bool IsWish(WideViewWish? told, double? trueFieldDeg) => told is null
        ? trueFieldDeg is null
        : trueFieldDeg is { } field && Math.Abs(told.TrueFieldDeg - field) <= Margin;

    private bool? NothingIsBetter() => All(NoSmallerStep, NoWishGranted, NoLessExcess, NoGreaterQuality, NothingPreferred, NothingCheaper);

    private bool? NoSmallerStep() => values.LeastLargestStep.Ln <= Problem.EnoughStep.Ln + Margin
        ? true
        : HasNone(finder, Question.Anything.KeepingTo(new Step(values.LeastLargestStep.Ln - Margin)));

    /// <summary>None, if the plan says that none is.</summary>
    private bool? NoWishGranted() => plan.Wish is { Granted: false } wish ? HasNone(finder, Kept.WithField(wish.TrueFieldDeg)) : true;

    private bool? NoLessExcess() => values.LeastMeanExcess <= Margin
        ? true
        : HasNone(finder, KeptAndWished.WithExcessUpTo(values.LeastMeanExcess - Margin));

    private bool? NoGreaterQuality() =>
        (values.GreatestQuality is null) != (Problem.Preferences.Prefer == Prefer.LowPrice) ? false
        : values.GreatestQuality is { } greatest
            ? HasNone(finder, KeptAndWished.WithExcessUpTo(values.MeanExcessAllowed).WithQualityFrom(Quality, greatest + Margin))
        : true;

    private bool? NothingPreferred() => Measure.PreferenceOf(Problem) is { } preference
        ? HasNone(finder, AsGood().Below(preference, preference.Of(plan.Purchases) - 1))
        : true;

    private bool? NothingCheaper()
    {
        var question = AsGood() with { MostTotalPrice = plan.Purchases.Sum(item => item.ExactPrice) };
        question = Measure.PreferenceOf(Problem) is { } preference ? question.Below(preference, preference.Of(plan.Purchases)) : question;
        return HasNone(finder, question.Below(Measure.PriceThenCount, Measure.PriceThenCount.Of(plan.Purchases) - 1));
    }

    /// <summary>What the stages before the last keep.</summary>
    private Question AsGood()
    {
        var question = KeptAndWished.WithExcessUpTo(values.MeanExcessAllowed);
        return values.QualityRequired is { } required ? question.WithQualityFrom(Quality, required) : question;
    }

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
