using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class NearestSelfTests
{
    [Fact]
    public void A_field_too_wide_names_the_nearest_budget_and_width()
    {
        OracleProblem problem = Problem(Zoned).Selling(
            Eyepiece("wide", 28, price: 300, field: 82) with { Barrel = OracleBarrel.Inch2 },
            Eyepiece("mid", 20, price: 50, field: 60));
        problem = problem.WithLimits(limits => limits with { Budget = 60 }) with
        {
            Preferences = new() { MustFrame = [new OracleFrame("Field", 1.25, "Zoned")] },
        };

        OracleResult result = Exhaustive.Solve(problem);

        Assert.Equal(OracleOutcome.Infeasible, result.Outcome);
        Assert.Equivalent(new OracleNearest(300, null, null, null, [1.2]), result.Nearest);
    }

    [Fact]
    public void Conflicting_limits_name_their_nearest_values()
    {
        OracleProblem problem = Problem(Even)
            .Selling(Eyepiece("low", 9.5), Eyepiece("high", 2.5), Barlow("barlow", 1.5)).Owning(Eyepiece("own", 10));

        OracleNearest overlaps = Exhaustive.Solve(problem.Including("low")).Nearest!;
        OracleNearest purchases = Exhaustive.Solve(
            problem.Including("high", "barlow").WithLimits(limits => limits with { MaxPurchases = 1 })).Nearest!;
        OracleNearest barlows = Exhaustive.Solve(
            problem.Including("barlow").WithLimits(limits => limits with { MaxBarlows = 0 })).Nearest!;

        Assert.Equivalent(new OracleNearest(null, null, null, 1, []), overlaps);
        Assert.Equivalent(new OracleNearest(null, 2, null, null, []), purchases);
        Assert.Equivalent(new OracleNearest(null, null, 1, null, []), barlows);
    }

    [Fact]
    public void Nearest_values_agree_with_trying_one_value_after_another()
    {
        for (int seed = 0; seed < 400; seed++)
        {
            OracleProblem problem = RandomProblems.Make(seed);
            if (Exhaustive.Solve(problem).Nearest is not { } nearest)
            {
                continue;
            }

            Assert.Equal(First(0, 8, value => problem.WithLimits(limits => limits with { MaxPurchases = value })), nearest.MaxPurchases);
            Assert.Equal(First(0, 4, value => problem.WithLimits(limits => limits with { MaxBarlows = value })), nearest.MaxBarlows);
            Assert.Equal(First(0, 20, value => problem.WithLimits(limits => limits with { AllowedOverlaps = value })), nearest.AllowedOverlaps);
            AssertLeastBudget(problem, nearest.Budget);
        }
    }

    private static void AssertLeastBudget(OracleProblem problem, decimal? budget)
    {
        OracleProblem at = problem.WithLimits(limits => limits with { Budget = budget ?? 1_000_000 });
        OracleProblem below = problem.WithLimits(limits => limits with { Budget = (budget ?? 1_000_000) - 0.01m });
        Assert.Equal(budget is not null, IsFeasible(at));
        Assert.False(IsFeasible(below));
    }

    private static int? First(int from, int to, Func<int, OracleProblem> problemWith) =>
        Enumerable.Range(from, to - from + 1).Where(value => IsFeasible(problemWith(value))).Select(value => (int?)value).FirstOrDefault();

    private static bool IsFeasible(OracleProblem problem) => new OracleSearch(problem).AllowedSets().Any();
}
