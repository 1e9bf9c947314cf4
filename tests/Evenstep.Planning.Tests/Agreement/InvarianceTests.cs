using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>What must not change an answer.</summary>
public class InvarianceTests
{
    /// <summary>How far apart two values may be that were worked out from scaled numbers.</summary>
    private const double FigureTolerance = 1e-6;

    /// <summary>Told of what does not tell its own, for what is assumed of it goes by its focal length in mm.</summary>
    private const double KnownFieldDeg = 52;
    private const double KnownEyeReliefMm = 11;

    private static readonly int[] Seeds = [.. Enumerable.Range(100_000, 300)];

    [Fact]
    public void The_order_in_which_items_are_listed_changes_nothing()
    {
        foreach (var seed in Seeds)
        {
            var problem = RandomProblems.Make(seed);
            var shuffled = RandomProblems.Shuffle(problem, seed + 1);
            Assert.Equal(Ids(problem), Ids(shuffled));
        }
    }

    [Fact]
    public void Asked_twice_a_problem_gets_the_same_plan()
    {
        foreach (var seed in Seeds.Take(50))
        {
            Assert.Equal(Ids(RandomProblems.Make(seed)), Ids(RandomProblems.Make(seed)));
        }
    }

    /// <summary>
    /// Only ratios of focal lengths make powers: with the range given, no field stops, every figure known and the cones that
    /// eyepieces are made for scaled as well, their unit does not matter.
    /// </summary>
    [Theory]
    [InlineData(0.9)]
    [InlineData(1.1)]
    public void Scaling_all_focal_lengths_together_changes_nothing(double scale)
    {
        var (compared, steep) = (0, 0);
        foreach (var seed in Seeds)
        {
            var problem = Scaled(RandomProblems.Make(seed), 1);
            if (problem is null || Scaled(problem, scale) is not { } scaled)
            {
                continue;
            }

            var (plan, scaledPlan) = (Solve(problem), Solve(scaled));
            Assert.Equal(plan.Outcome, scaledPlan.Outcome);
            Assert.Equal(plan.Purchases.Sum(item => item.Price), scaledPlan.Purchases.Sum(item => item.Price));
            Assert.Equal(plan.Values?.LeastLargestStep.Ln ?? 0, scaledPlan.Values?.LeastLargestStep.Ln ?? 0, FigureTolerance);
            Assert.Equal(plan.Values?.LeastMeanExcess ?? 0, scaledPlan.Values?.LeastMeanExcess ?? 0, FigureTolerance);
            Assert.Equal(plan.Values?.GreatestQuality ?? 0, scaledPlan.Values?.GreatestQuality ?? 0, FigureTolerance);
            Assert.Equal(plan.Wish?.Granted, scaledPlan.Wish?.Granted);
            compared++;
            steep += problem.Catalogue.Any(item => item.FastestFocalRatio is not null) ? 1 : 0;
        }

        Assert.True(compared > Seeds.Length / 2 && steep > Seeds.Length / 4, $"{compared} compared, {steep} of them with steep cones");
    }

    private static string Ids(OracleProblem problem)
    {
        var plan = Solve(problem);
        return $"{plan.Outcome} {string.Join(' ', plan.Purchases)} {plan.Values} {plan.Wish}";
    }

    private static Plan Solve(OracleProblem problem) =>
        Planner.Solve(Bridge.ToProblem(problem), new WorkBudget(Comparison.WorkLimit));

    /// <summary>The problem with its ranges and all figures given, without field stops, and with other focal lengths and ratios; null if
    /// one leaves its bounds.</summary>
    private static OracleProblem? Scaled(OracleProblem problem, double scale)
    {
        var ranges = Bridge.ToProblem(problem).Telescopes.Select(telescope => telescope.Range).ToArray();
        try
        {
            var scaled = problem with
            {
                Telescopes =
                [
                    .. problem.Telescopes.Select((telescope, t) => telescope with
                    {
                        FocalLengthMm = telescope.FocalLengthMm * scale,
                        LowestPower = ranges[t].Lowest,
                        HighestPower = ranges[t].Highest,
                    }),
                ],
                Owned = [.. problem.Owned.Select(owned => owned with { Item = owned.Item is { } item ? Scaled(item, scale) : null })],
                Catalogue = [.. problem.Catalogue.Select(item => Scaled(item, scale))],
            };
            _ = Bridge.ToProblem(scaled);
            return scaled;
        }
        catch (ArgumentOutOfRangeException)
        {
            return null;
        }
    }

    private static OracleItem Scaled(OracleItem item, double scale) => item with
    {
        FocalLengthMm = item.FocalLengthMm * scale,
        ShortestFocalLengthMm = item.ShortestFocalLengthMm * scale,
        LongestFocalLengthMm = item.LongestFocalLengthMm * scale,
        FieldStopMm = null,
        FastestFocalRatio = item.FastestFocalRatio * scale,
        StatedApparentFieldDeg = item.StatedApparentFieldDeg ?? KnownFieldDeg,
        StatedEyeReliefMm = item.StatedEyeReliefMm ?? KnownEyeReliefMm,
    };
}
