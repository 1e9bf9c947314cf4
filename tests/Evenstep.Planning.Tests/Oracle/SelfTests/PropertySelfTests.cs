using static Evenstep.Planning.Tests.Oracle.SelfTests.SmallProblems;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

/// <summary>What must hold of every problem, whatever its answer.</summary>
public sealed class PropertySelfTests
{
    private const int Problems = 200;
    private const int FirstSeed = 10_000;

    [Fact]
    public void What_is_spare_together_is_spare_alone_and_something_is_if_anything_is()
    {
        foreach (OracleProblem problem in Drawn())
        {
            if (Exhaustive.Elect(problem) is { Outcome: OracleOutcome.Solved } result)
            {
                IReadOnlyList<string> alone = OracleSpare.Alone(problem, result.BestSets[0].Ids);
                IReadOnlyList<IReadOnlyList<string>> together = OracleSpare.Together(problem, result.BestSets[0].Ids);

                Assert.All(together, set => Assert.Subset(alone.ToHashSet(), set.ToHashSet()));
                Assert.Equal(alone.Count > 0, together[0].Count > 0);
            }
        }
    }

    /// <summary>A sum over many positions, each of which knows only the views.</summary>
    [Fact]
    public void Quality_is_that_of_many_positions()
    {
        const int Positions = 4000;
        foreach (OracleProblem problem in Drawn().Take(40))
        {
            OracleSearch search = new(problem);
            double reach = Math.Max(OracleLadder.Serving(search.Bench.EnoughStep), 0.3);
            OracleKitQuality quality = new(search, 2 * reach);
            int set = (1 << search.Candidates.Count) - 1;

            double good = 0;
            double needed = 0;
            foreach (int telescope in search.Views.Counting)
            {
                (OracleView[] kit, OracleView[] owned) = ([.. search.Views.Of(set, telescope)], [.. search.Views.Of(0, telescope)]);
                for (int i = 0; i < Positions; i++)
                {
                    double at = (i + 0.5) / Positions * search.Bench.Scales[telescope].Length;
                    if (!owned.Any(view => DistanceTo(view, at) <= OracleLadder.Serving(search.Bench.EnoughStep)))
                    {
                        needed++;
                        good += kit.Where(view => DistanceTo(view, at) <= reach).Select(view => view.Quality).DefaultIfEmpty(0).Max();
                    }
                }
            }

            double expected = good / Math.Max(needed, Positions * search.Views.Counting.Count / 2.0);
            Assert.Equal(expected, quality.Of(set), 0.02);
        }
    }

    [Fact]
    public void The_curve_is_what_each_budget_buys()
    {
        foreach (OracleProblem problem in Drawn())
        {
            IReadOnlyList<OraclePoint> points = OracleSpending.Of(problem).Frontier();
            OracleSearch search = new(problem);
            foreach (int set in search.AllowedSets())
            {
                double best = points.Last(point => point.Price <= search.Price(set)).LnStep;
                Assert.True(Math.Max(search.LnEnoughStep, search.Figures(set).Counting.LnLargestStep) >= best - Close);
            }

            Assert.Equal(points.Select(point => point.Price).Order(), points.Select(point => point.Price));
            Assert.Equal(points.Select(point => point.LnStep).OrderDescending(), points.Select(point => point.LnStep));
        }
    }

    [Fact]
    public void The_best_sets_keep_to_every_stage()
    {
        foreach (OracleProblem problem in Drawn())
        {
            OracleResult result = Exhaustive.Elect(problem);
            Assert.All(result.BestSets, plan =>
            {
                OracleFigures figures = plan.Figures.Counting;
                Assert.True(plan.IsAllowed);
                Assert.True(figures.LnLargestStep <= (1.15 * Math.Log(result.LeastLargestStep!.Value)) + OracleTolerance.Epsilon);
                Assert.True(figures.MeanExcess <= result.LeastMeanExcess!.Value + 0.005 + OracleTolerance.Epsilon);
                Assert.True(result.BestQuality is not { } best || plan.Quality >= best - 0.03 - OracleTolerance.Epsilon);
                Assert.Equal(result.BestPrice, plan.Price);
            });
            Assert.Equal(problem.Preferences.Prefer == OraclePrefer.LowPrice || result.Outcome == OracleOutcome.Infeasible, result.BestQuality is null);
        }
    }

    private static IEnumerable<OracleProblem> Drawn() => Enumerable.Range(FirstSeed, Problems).Select(RandomProblems.Make);

    private static double DistanceTo(OracleView view, double at) => Math.Max(0, Math.Max(view.Start - at, at - view.End));
}
