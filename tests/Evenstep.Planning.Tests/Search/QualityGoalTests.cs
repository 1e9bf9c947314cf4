using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

/// <summary>The goals that look at quality, against all sets, whose quality is worked out from the definitions alone.</summary>
public class QualityGoalTests
{
    private const int Problems = 250;
    private const double Rounding = 1e-7;

    [Fact]
    public void The_greatest_quality_is_that_of_all_sets_whose_excess_is_small_enough()
    {
        var (found, several) = (0, 0);
        foreach (var (tried, measure, most, good) in Rated())
        {
            var goal = Descents.Run(
                tried.Drawn, tried.Step, new MostQuality(most, new Selection([]), double.NegativeInfinity), measure: measure);
            var expected = good.Select(one => one.Quality).DefaultIfEmpty(double.NegativeInfinity).Max();
            Assert.True(expected == goal.Best || Math.Abs(expected - goal.Best) <= Rounding, $"seed {tried.Drawn.Seed}: {goal.Best}, not {expected}");
            if (goal.Selection is { } best)
            {
                Assert.Equal(goal.Best, good.Single(one => one.Name == Noted.NameOf(best.Items.Select(item => item.Id))).Quality, Rounding);
                found++;
                several += good.Any(one => one.Quality < expected - Rounding) ? 1 : 0;
            }
        }

        Assert.True(found > Problems / 2 && several > Problems / 4, $"{found} found, in {several} problems the sets differ");
    }

    [Fact]
    public void The_least_cost_is_that_of_all_sets_that_are_good_enough()
    {
        var decides = 0;
        foreach (var (tried, measure, most, good) in Rated().Where(one => one.Good.Length > 0))
        {
            var ordered = good.Select(one => one.Quality).OrderDescending().ToArray();
            var least = ordered[ordered.Length / 4];
            var expected = good.Where(one => one.Quality >= least - Tolerance.Value).Min(one => one.Cost);
            var priceDecides = tried.Drawn.Problem.Preferences.Prefer is not (Prefer.LightWeight or Prefer.Parfocal);
            var goal = Descents.Run(
                tried.Drawn, tried.Step, new LeastCost(most, least, new Selection([]), Cost.Unknown, priceDecides), measure: measure);
            Assert.Equal(expected, goal.Best);
            Assert.Equal(expected, tried.Drawn.Ground.Pricing.Of(goal.Selection!.Items));
            decides += expected != good.Min(one => one.Cost) ? 1 : 0;
        }

        Assert.True(decides > Problems / 5, $"only in {decides} problems the quality decides");
    }

    [Fact]
    public void What_is_no_better_than_the_ceiling_ends_the_search()
    {
        foreach (var (tried, measure, most, good) in Rated().Where(one => one.Good.Length > 0))
        {
            var ceiling = good.Min(one => one.Quality);
            var goal = Descents.Run(
                tried.Drawn,
                tried.Step,
                new MostQuality(most, new Selection([]), double.NegativeInfinity) { Ceiling = ceiling },
                measure: measure);
            Assert.True(goal.IsReached && goal.Best >= ceiling - Rounding);
        }
    }

    private static IEnumerable<(Tried Tried, QualityMeasure Measure, double MostExcess, (string Name, double Quality, Cost Cost)[] Good)> Rated()
    {
        foreach (var tried in Tried.Problems(Problems).Where(tried => tried.Drawn.Problem.Preferences.Prefer != Prefer.LowPrice))
        {
            var keeping = tried.KeepingToStep();
            var most = keeping.Select(set => set.Figures.Counting.MeanExcess).Order().ElementAtOrDefault(keeping.Count / 2);
            var search = new OracleSearch(tried.Drawn.Oracle);
            var quality = new OracleKitQuality(search, tried.Step.Ln);
            var measure = QualityMeasure.Of(tried.Drawn.Problem, tried.Drawn.Ground.Candidacy.Telescopes, tried.Step);
            yield return (tried, measure, most,
            [
                .. keeping.Where(set => Tolerance.AtMost(set.Figures.Counting.MeanExcess, most))
                    .Select(set => (Noted.NameOf(set.Ids), quality.Of(search.SetOf(set.Ids)), tried.CostOf(set))),
            ]);
        }
    }
}
