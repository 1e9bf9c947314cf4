using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

public sealed class AlternativesTests
{
    private const int FirstSeed = 520_000;
    private const int Problems = 400;

    [Fact]
    public void Each_is_the_best_plan_of_the_problem_that_excludes_the_item()
    {
        var outcomes = new Dictionary<Outcome, int>();
        foreach (var planned in Planned.Solvable(FirstSeed, Problems))
        {
            var alternatives = Alternatives.Of(planned.Problem, planned.Plan, new WorkBudget(Comparison.WorkLimit));

            Assert.Equal(planned.Plan.Purchases.AsEnumerable(), alternatives.Select(one => one.Without));
            foreach (var alternative in alternatives)
            {
                var excluding = Excluding(planned.Asked, alternative.Without.Id);
                Assert.Empty(
                    Comparison.Differences(excluding, _ => alternative.Plan!).Select(fault => $"seed {planned.Seed} without {alternative.Without}: {fault}"));
                outcomes[alternative.Plan!.Outcome] = outcomes.GetValueOrDefault(alternative.Plan.Outcome) + 1;
            }
        }

        Assert.All(
            [Outcome.Optimal, Outcome.NothingWorthwhile, Outcome.Infeasible],
            outcome => Assert.True(outcomes.GetValueOrDefault(outcome) > 5, $"{outcome} is too rare"));
    }

    [Fact]
    public void None_is_said_where_the_work_ends_before_any_is_found()
    {
        var (missing, found) = (0, 0);
        foreach (var planned in Planned.Solvable(FirstSeed, Problems))
        {
            var alternatives = Alternatives.Of(planned.Problem, planned.Plan, new WorkBudget(0));
            missing += alternatives.Count(one => one.Plan is null);
            found += alternatives.Count(one => one.Plan is not null);
        }

        Assert.True(missing > 0, "the model is never needed");
        Assert.True(found > missing, "the search settles most by itself");
    }

    [Fact]
    public void A_plan_that_buys_nothing_has_no_alternatives()
    {
        var problem = Some.Problem();
        var plan = new Plan { Outcome = Outcome.NothingWorthwhile, Purchases = [], Candidacy = Candidacy.Of(problem) };

        Assert.Empty(Alternatives.Of(problem, plan, new WorkBudget(Comparison.WorkLimit)));
    }

    private static OracleProblem Excluding(OracleProblem problem, string id) =>
        problem with { Preferences = problem.Preferences with { Exclude = [.. problem.Preferences.Exclude, id] } };
}
