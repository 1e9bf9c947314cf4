using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>The referee lets good plans pass (the agreement tests see to that) and finds fault with every kind of bad one.</summary>
public class RefereeTests
{
    private const double Spoilt = 0.05;

    private static readonly int[] Seeds = [.. Enumerable.Range(500_000, 300)];

    [Fact]
    public void An_item_that_is_no_candidate_is_not_let_pass() => AssertFaulty("is no candidate", (_, plan) =>
        plan.Candidacy.Exclusions.FirstOrDefault()?.Item is { } item ? plan with { Purchases = plan.Purchases.Add(item) } : null);

    [Fact]
    public void An_item_of_nowhere_is_not_let_pass() => AssertFaulty("is not for sale", (_, plan) =>
        plan with { Purchases = plan.Purchases.Add(new Item("from-nowhere", Some.Eyepiece(20).Optic)) });

    [Fact]
    public void A_needless_item_is_not_let_pass() => AssertFaulty("", (problem, plan) =>
        plan.Candidacy.Candidates.Except(plan.Purchases).FirstOrDefault() is { } item ? plan with { Purchases = plan.Purchases.Add(item) } : null);

    [Fact]
    public void Too_dear_a_set_is_not_let_pass() => AssertFaulty("Budget", (problem, plan) =>
        plan.Candidacy.Candidates.Sum(item => item.Price) > problem.Limits.Budget ? plan with { Purchases = plan.Candidacy.Candidates } : null);

    [Fact]
    public void A_largest_step_that_is_not_kept_is_not_let_pass() => AssertFaulty("largest step", (problem, plan) =>
        Spoil(
            plan, values => values with { LeastLargestStep = new(values.LeastLargestStep.Half - Spoilt), Bound = new(values.LeastLargestStep.Half - Spoilt) }));

    [Fact]
    public void A_bound_above_the_step_is_not_let_pass() => AssertFaulty("bound", (_, plan) =>
        Spoil(plan, values => values with { Bound = new(values.Bound.Ln + Spoilt) }));

    [Fact]
    public void A_mean_excess_that_is_not_kept_is_not_let_pass() => AssertFaulty("mean excess", (_, plan) =>
        Spoil(plan, values => values with { LeastMeanExcess = values.LeastMeanExcess - Spoilt }));

    [Fact]
    public void A_wrong_preference_is_not_let_pass() => AssertFaulty("preference", (_, plan) =>
        Spoil(plan, values => values with { Preference = values.Preference + Spoilt }));

    [Fact]
    public void A_wish_that_is_not_granted_is_not_let_pass() => AssertFaulty("no view of", (_, plan) =>
        plan with { Wish = new WideViewWish(TrueFieldDeg: 170, Granted: true) });

    [Fact]
    public void A_wrong_outcome_is_not_let_pass() => AssertFaulty("outcome", (_, plan) =>
        plan with { Outcome = plan.Purchases.IsEmpty ? Outcome.Optimal : Outcome.NothingWorthwhile });

    [Fact]
    public void An_infeasible_plan_without_conflicts_is_not_let_pass() => AssertFaulty("conflicts", (_, plan) =>
        plan with { Outcome = Outcome.Infeasible, Purchases = [], Values = null });

    private static Plan Spoil(Plan plan, Func<StageValues, StageValues> spoil) => plan with { Values = spoil(plan.Values!) };

    /// <summary>Every plan that can be spoilt in this way has a fault said of it that names the thing.</summary>
    private static void AssertFaulty(string word, Func<PurchaseProblem, Plan, Plan?> spoil)
    {
        var spoilt = 0;
        foreach (var seed in Seeds)
        {
            var problem = Bridge.ToProblem(RandomProblems.Make(seed));
            var plan = Planner.Solve(problem, new WorkBudget(Comparison.WorkLimit));
            if (plan.Values is null || spoil(problem, plan) is not { } bad)
            {
                continue;
            }

            spoilt++;
            ImmutableArray<string> faults = Referee.FaultsOf(problem, bad);
            Assert.True(faults.Any(fault => fault.Contains(word, StringComparison.Ordinal)), $"seed {seed}: {string.Join(" ", faults)}");
        }

        Assert.True(spoilt > Seeds.Length / 4, $"only {spoilt} plans could be spoilt");
    }
}
