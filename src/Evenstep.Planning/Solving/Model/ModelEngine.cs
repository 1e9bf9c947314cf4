using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>The constraint model as an engine: it finds the best set of purchases and proves it, stage by stage. The authority.</summary>
public sealed class ModelEngine
{
    private readonly PurchaseProblem problem;
    private readonly Candidacy candidacy;
    private readonly PurchaseSpace space;
    private readonly Work work;

    private readonly HeadStart? headStart;

    private ModelEngine(PurchaseProblem problem, Work work, HeadStart? headStart)
    {
        this.problem = problem;
        this.work = work;
        this.headStart = headStart;
        candidacy = Candidacy.Of(problem);
        space = PurchaseSpace.Of(problem, candidacy);
    }

    /// <summary>The plan for a problem: the same for the same problem, whatever the order of its items.</summary>
    /// <param name="problem">What to plan.</param>
    /// <param name="budget">The work and memory that it may take.</param>
    /// <param name="headStart">What another engine found before its own limit came.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    /// <exception cref="WorkLimitException">The work limit ended before any allowed set was found, and before it was proved
    /// that there is none.</exception>
    public static Plan Solve(PurchaseProblem problem, WorkBudget budget, HeadStart? headStart = null) =>
        new ModelEngine(problem, new Work(budget), headStart).Solve();

    private Plan Solve()
    {
        if (!DemandsAreCandidates())
        {
            return Infeasible();
        }

        var wish = WideViewWish.TrueFieldWished(problem, candidacy.Candidates);
        if (wish is { } field)
        {
            var wishing = space with { WishedFieldDeg = field };
            var model = new PurchaseModel(wishing);
            if (AnyAllowed(model, wishing) is { } granting)
            {
                return Best(model, granting, new WideViewWish(field, Granted: true));
            }
        }

        var plain = new PurchaseModel(space);
        return AnyAllowed(plain, space) is { } any
            ? Best(plain, any, wish is { } ungranted ? new WideViewWish(ungranted, Granted: false) : null)
            : Infeasible();
    }

    private bool DemandsAreCandidates()
    {
        var candidates = candidacy.Candidates.Select(item => item.Id).ToHashSet();
        return problem.Demands.MustInclude.All(candidates.Contains);
    }

    /// <summary>Some allowed set: to buy nothing, if that is one; null if it is proved that there is none.</summary>
    private Standing? AnyAllowed(PurchaseModel model, PurchaseSpace wishing)
    {
        if (HeadStartFor(wishing) is { } start)
        {
            return Standing.Of(problem, start.Purchases, isProved: false);
        }

        var nothing = Kit.Of(problem, []);
        var isGranted = wishing.WishedFieldDeg is not { } field || Breaches.Frames(nothing, field, telescopeIndex: null);
        if (isGranted && !Breaches.Of(nothing).Any())
        {
            return new Standing([], nothing.Figures, IsProved: false);
        }

        var verdict = work.Find(model);
        return verdict.Purchases is { } purchases ? Standing.Of(problem, purchases, isProved: false)
            : verdict.IsProved ? null
            : throw new WorkLimitException("The work limit ended before any allowed set of purchases was found.");
    }

    private HeadStart? HeadStartFor(PurchaseSpace wishing) => headStart?.WishedFieldDeg == wishing.WishedFieldDeg ? headStart : null;

    private Plan Best(PurchaseModel model, Standing any, WideViewWish? wish)
    {
        var first = LargestStepStage.Run(model, work, any, HeadStartFor(model.Space)?.LnBound ?? 0);
        var lnAllowed = StageValues.StepLeeway * first.LnLeast;
        var second = MeanExcessStage.Run(model, work, lnAllowed, first.Best);
        var values = new StageValues(first.LnLeast, first.LnBound, second.Figures.MeanExcess, Preference: 0);
        var third = PreferenceStage.Run(model, work, values.LnLargestStepAllowed, values.MeanExcessAllowed, second);

        var isProved = first.Best.IsProved && second.IsProved && third.IsProved;
        return new Plan
        {
            Outcome = !isProved ? Outcome.BestFound : third.Purchases.IsEmpty ? Outcome.NothingWorthwhile : Outcome.Optimal,
            Purchases = third.Purchases,
            Candidacy = candidacy,
            Values = values with { Preference = new PreferenceScore(problem).Of(third.Purchases) },
            Wish = wish,
        };
    }

    private Plan Infeasible() => new()
    {
        Outcome = Outcome.Infeasible,
        Purchases = [],
        Candidacy = candidacy,
        Conflicts = new Diagnosis(problem, candidacy, work).Run(),
    };
}
