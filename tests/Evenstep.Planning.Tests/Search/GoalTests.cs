using Evenstep.Planning.Purchases;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>What each goal gives up must never hold what it looks for.</summary>
public class GoalTests
{
    private const int Problems = 300;
    private const double Rounding = 1e-9;

    [Fact]
    public void Some_set_is_found_exactly_if_one_keeps_to_the_step()
    {
        var none = 0;
        foreach (var tried in Tried.Problems(Problems).SelectMany(tried => new[] { tried, tried with { Step = tried.Step.Widened(0.7) } }))
        {
            var any = Descents.Run(tried.Drawn, tried.Step, new AnySet());
            Assert.Equal(tried.KeepingToStep().Count > 0, any.Selection is not null);
            Assert.Equal(any.IsReached, any.Selection is not null);
            none += any.IsReached ? 0 : 1;
        }

        Assert.True(none > Problems / 5, $"only {none} have none");
    }

    [Fact]
    public void The_set_found_is_allowed_and_its_step_is_told_as_it_is()
    {
        foreach (var tried in Tried.Problems(Problems))
        {
            if (Descents.Run(tried.Drawn, tried.Step, new AnySet()) is { Selection: { } found } any)
            {
                var step = tried.Allowed[Noted.NameOf(found.Items.Select(item => item.Id))].Figures.Counting.LnLargestStep;
                Assert.Equal(step, any.LargestStep.Ln, Rounding);
                Assert.True(Tolerance.AtMost(step, tried.Step.Ln));
            }
        }
    }

    [Fact]
    public void The_least_excess_is_that_of_all_sets_that_keep_to_the_step()
    {
        foreach (var tried in Tried.Problems(Problems))
        {
            var expected = tried.KeepingToStep().Select(set => set.Figures.Counting.MeanExcess).DefaultIfEmpty(double.PositiveInfinity).Min();
            var found = Descents.Run(tried.Drawn, tried.Step, new LeastExcess(new Selection([]), double.PositiveInfinity)).Best;
            Assert.True(expected == found || Math.Abs(expected - found) <= Rounding, $"seed {tried.Drawn.Seed}: {found} and not {expected}");
        }
    }

    [Fact]
    public void The_least_cost_is_that_of_all_sets_whose_excess_is_small_enough()
    {
        var found = 0;
        foreach (var tried in Tried.Problems(Problems))
        {
            var keeping = tried.KeepingToStep();
            var most = keeping.Select(set => set.Figures.Counting.MeanExcess).Order().ElementAtOrDefault(keeping.Count / 4);
            var good = keeping.Where(set => Tolerance.AtMost(set.Figures.Counting.MeanExcess, most));
            var expected = good.Select(tried.CostOf).DefaultIfEmpty(Cost.Unknown).Min();
            var priceDecides = tried.Drawn.Problem.Preferences.Prefer is not (Prefer.LightWeight or Prefer.Parfocal);
            var least = Descents.Run(
                tried.Drawn, tried.Step, new LeastCost(most, double.NegativeInfinity, new Selection([]), Cost.Unknown, priceDecides));
            Assert.Equal(expected, least.Best);
            Assert.Equal(expected, least.Selection is { } best ? tried.Drawn.Ground.Pricing.Of(best.Items) : Cost.Unknown);
            found += least.Selection is { Items.IsEmpty: false } ? 1 : 0;
        }

        Assert.True(found > Problems / 2, $"only {found} buy anything");
    }
}
