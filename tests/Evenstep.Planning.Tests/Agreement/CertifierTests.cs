using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>The second prover confirms what is right, and nothing else.</summary>
public class CertifierTests
{
    private const double Spoilt = 0.05;

    private static readonly int[] Seeds = [.. Enumerable.Range(300_000, 400)];

    [Fact]
    public void Every_proved_plan_is_confirmed()
    {
        foreach (var (problem, plan, seed) in Plans())
        {
            Assert.True(Certify(problem, plan), $"seed {seed}");
        }
    }

    [Fact]
    public void A_plan_that_claims_too_wide_a_step_is_refuted() => AssertRefuted(
        (problem, plan) => plan.Values!.LnLeastLargestStep > 2 * problem.EnoughMismatch,
        values => values with { LnLeastLargestStep = values.LnLeastLargestStep + Spoilt });

    [Fact]
    public void A_plan_that_claims_too_great_an_excess_is_refuted() => AssertRefuted(
        (_, _) => true,
        values => values with { LeastMeanExcess = values.LeastMeanExcess + Spoilt });

    [Fact]
    public void A_plan_that_buys_more_than_it_needs_is_refuted()
    {
        var refuted = 0;
        foreach (var (problem, plan, seed) in Plans())
        {
            if (plan.Candidacy.Candidates.Except(plan.Purchases).FirstOrDefault(item => item.Price > 0) is { } needless)
            {
                var dearer = plan with { Purchases = plan.Purchases.Add(needless) };
                Assert.False(Certify(problem, dearer), $"seed {seed}");
                refuted++;
            }
        }

        Assert.True(refuted > Seeds.Length / 2);
    }

    [Fact]
    public void Without_work_nothing_is_said()
    {
        var (problem, plan, _) = Plans().First(one => one.Plan.Values!.LnLeastLargestStep > 2 * one.Problem.EnoughMismatch);
        Assert.Null(Certifier.Certify(problem, plan, new WorkBudget(0)));
    }

    private static void AssertRefuted(Func<PurchaseProblem, Plan, bool> applies, Func<StageValues, StageValues> spoil)
    {
        var refuted = 0;
        foreach (var (problem, plan, seed) in Plans().Where(one => applies(one.Problem, one.Plan)))
        {
            Assert.False(Certify(problem, plan with { Values = spoil(plan.Values!) }), $"seed {seed}");
            refuted++;
        }

        Assert.True(refuted > Seeds.Length / 4);
    }

    private static bool? Certify(PurchaseProblem problem, Plan plan) =>
        Certifier.Certify(problem, plan, new WorkBudget(Comparison.WorkLimit));

    private static IEnumerable<(PurchaseProblem Problem, Plan Plan, int Seed)> Plans() =>
        from seed in Seeds
        let problem = Bridge.ToProblem(RandomProblems.Make(seed))
        let plan = Planner.Solve(problem, new WorkBudget(Comparison.WorkLimit))
        where plan.Values is not null
        select (problem, plan, seed);
}
