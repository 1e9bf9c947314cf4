using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model;

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
    private readonly PurchaseModel model;
    private readonly Work work;

    private Certifier(Plan plan, StageValues values, PurchaseModel model, Work work)
    {
        this.plan = plan;
        this.values = values;
        this.model = model;
        this.work = work;
    }

    /// <summary>True if nothing better exists; false if something does, so that one of the two engines is wrong; null if the
    /// work limit came first, or the plan claims no proof. That nothing is allowed is the model's own finding: the search must
    /// have found nothing either.</summary>
    /// <param name="problem">What was planned.</param>
    /// <param name="plan">What came of it.</param>
    /// <param name="budget">The work and memory that it may take.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static bool? Certify(PurchaseProblem problem, Plan plan, WorkBudget budget)
    {
        if (plan.Values is not { } values || !plan.IsProved)
        {
            return null;
        }

        var work = new Work(budget);
        var space = PurchaseSpace.Of(problem, Candidacy.Of(problem));
        if (plan.Wish is not { } wish)
        {
            return new Certifier(plan, values, new PurchaseModel(space), work).NothingIsBetter();
        }

        var wishing = new PurchaseModel(space with { WishedFieldDeg = wish.TrueFieldDeg });
        return wish.Granted
            ? new Certifier(plan, values, wishing, work).NothingIsBetter()
            : All(() => IsImpossible(work.Find(wishing)), () => new Certifier(plan, values, new PurchaseModel(space), work).NothingIsBetter());
    }

    private bool? NothingIsBetter() => All(NoSmallerStep, NoLessExcess, NothingPreferred, NothingCheaper);

    private bool? NoSmallerStep() => values.LnLeastLargestStep <= (2 * model.Problem.EnoughMismatch) + Margin
        ? true
        : IsImpossible(LargestStepStage.KeepingTo(values.LnLeastLargestStep - Margin, model, work));

    private bool? NoLessExcess() => values.LeastMeanExcess <= Margin ? true : WithExcessUpTo(values.LeastMeanExcess - Margin, () => { });

    private bool? NothingPreferred() => model.Problem.Preferences.Prefer == Prefer.LowPrice
        ? true
        : WithExcessUpTo(values.MeanExcessAllowed, () =>
            model.Cp.Add(PreferenceModel.Units(model) <= PreferenceModel.UnitsOf(model.Problem, plan.Purchases) - 1));

    private bool? NothingCheaper() => WithExcessUpTo(values.MeanExcessAllowed, () =>
    {
        model.Cp.Add(PreferenceModel.Units(model) <= PreferenceModel.UnitsOf(model.Problem, plan.Purchases));
        model.Cp.Add(PreferenceModel.PriceThenCount(model) <= PreferenceModel.PriceThenCountOf(plan.Purchases) - 1);
    });

    private bool? WithExcessUpTo(double excess, Action further) => IsImpossible(model.Temporarily(() =>
    {
        var units = MeanExcessModel.Add(model, values.LnLargestStepAllowed, excess);
        model.Cp.Add(units <= MeanExcessModel.UnitsAtMost(excess));
        further();
        return work.Find(model);
    }));

    private static bool? IsImpossible(Verdict verdict) => verdict.Purchases is not null ? false : verdict.IsProved ? true : null;

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
