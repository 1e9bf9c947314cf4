using System.Globalization;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Solving.Model;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>The second prover confirms what is right, and nothing else.</summary>
public class CertifierTests
{
    private const double Spoilt = 0.05;

    /// <summary>A long run: EVENSTEP_AGREEMENT_BATCHES=40 makes over 1,000 problems.</summary>
    private static readonly int[] Seeds = [.. Enumerable.Range(300_000, 33 * int.Parse(
        Environment.GetEnvironmentVariable("EVENSTEP_AGREEMENT_BATCHES") ?? "12", CultureInfo.InvariantCulture))];

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
        (problem, plan) => plan.Values!.LeastLargestStep.Ln > problem.EnoughStep.Ln,
        values => values with { LeastLargestStep = new(values.LeastLargestStep.Ln + Spoilt) });

    [Fact]
    public void A_plan_that_claims_too_great_an_excess_is_refuted() => AssertRefuted(
        (_, _) => true,
        values => values with { LeastMeanExcess = values.LeastMeanExcess + Spoilt });

    [Fact]
    public void A_plan_that_claims_too_low_a_quality_is_refuted() => AssertRefuted(
        (_, plan) => plan.Values!.GreatestQuality > Spoilt,
        values => values with { GreatestQuality = values.GreatestQuality - Spoilt });

    [Fact]
    public void A_plan_that_claims_a_quality_where_none_counts_or_none_where_it_counts_is_refuted() => AssertRefuted(
        (_, _) => true,
        values => values with { GreatestQuality = values.GreatestQuality is null ? 0.5 : null });

    [Fact]
    public void A_plan_that_denies_the_wish_for_a_wide_view_is_refuted()
    {
        var refuted = 0;
        foreach (var (problem, plan, seed) in Plans())
        {
            if (plan.Wish is { Granted: true } wish)
            {
                Assert.False(Certify(problem, plan with { Wish = wish with { Granted = false } }), $"seed {seed}");
                Assert.False(Certify(problem, plan with { Wish = null }), $"seed {seed}");
                refuted++;
            }
        }

        Assert.True(refuted > Seeds.Length / 10, $"only {refuted} wishes were granted");
    }

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

    /// <summary>About 2,000 of them; EVENSTEP_AGREEMENT_BATCHES makes more.</summary>
    [Fact]
    public void No_claim_that_is_false_by_a_little_is_confirmed()
    {
        var refuted = 0;
        foreach (var (problem, plan, seed) in Plans())
        {
            foreach (var (claim, claimedOf, claimed) in FalseClaims.Of(problem, plan))
            {
                Assert.False(Certify(claimedOf, claimed), $"seed {seed}: {claim}");
                refuted++;
            }
        }

        Assert.True(refuted > 6 * Seeds.Length, $"only {refuted} claims were made");
    }

    [Fact]
    public void That_nothing_is_allowed_is_confirmed_where_it_is_so()
    {
        var confirmed = 0;
        foreach (var seed in Seeds)
        {
            var problem = Bridge.ToProblem(RandomProblems.Make(seed));
            var plan = Planner.Solve(problem, new WorkBudget(Comparison.WorkLimit));
            if (plan.Outcome == Outcome.Infeasible)
            {
                Assert.True(Certify(problem, plan), $"seed {seed}");
                confirmed++;
            }
        }

        Assert.True(confirmed > 10, $"only {confirmed} were infeasible");
    }

    /// <summary>More sets of Barlows than can be looked at.</summary>
    [Fact]
    public void Where_sets_of_Barlows_are_too_many_nothing_is_said_and_nothing_claimed()
    {
        var problem = Some.Problem(catalogue: [.. Enumerable.Range(1, 100).Select(n => Some.Barlow(1.5 + (0.01 * n))), Some.Eyepiece(10), Some.Eyepiece(25)]);
        problem = problem with { Limits = problem.Limits with { MaxBarlows = 2 }, Preferences = problem.Preferences with { EnoughStep = 1 } };
        var plan = ModelEngine.Solve(problem, new WorkBudget(Comparison.WorkLimit));
        Assert.Equal((Outcome.BestFound, ReachedLimit.Work), (plan.Outcome, plan.Limit));
        Assert.Empty(Referee.FaultsOf(problem, plan));
        Assert.Null(Certify(problem, plan with { Outcome = Outcome.Optimal }));
    }

    [Fact]
    public void Without_memory_nothing_is_said()
    {
        var (problem, plan, _) = Plans().First(one => one.Plan.Values!.LeastLargestStep.Ln > one.Problem.EnoughStep.Ln);
        var budget = new WorkBudget(new WorkLimits(Comparison.WorkLimit, Bytes: 1000));
        Assert.Null(Certifier.Certify(problem, plan, budget));
        Assert.Equal(ReachedLimit.Memory, budget.Reached);
    }

    [Fact]
    public void Without_work_nothing_is_said()
    {
        var (problem, plan, _) = Plans().First(one => one.Plan.Values!.LeastLargestStep.Ln > one.Problem.EnoughStep.Ln);
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
