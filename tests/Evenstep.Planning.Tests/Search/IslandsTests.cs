using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

public class IslandsTests
{
    private const int Axes = 2000;
    private const int MostReaches = 7;

    private const double Rounding = 1e-12;

    [Fact]
    public void Adding_reaches_in_any_order_gives_the_figures_of_the_ladder_at_every_step()
    {
        foreach (var axis in AxisDraw.Many(Axes, MostReaches))
        {
            for (var order = 0; order < 3; order++)
            {
                var reaches = RandomProblems.InAnotherOrder(axis.Reaches, new Random(order));
                var islands = axis.Islands();
                AssertFigures(axis.Figures(), islands);
                for (var i = 0; i < reaches.Length; i++)
                {
                    islands.Add(reaches[i]);
                    AssertFigures(axis.Figures(reaches[..(i + 1)]), islands);
                }
            }
        }
    }

    [Fact]
    public void A_gain_is_what_adding_the_reach_takes_off_the_excess()
    {
        foreach (var (axis, other) in AxesAndOthers())
        {
            var islands = axis.Islands(axis.Reaches);
            var (before, gain) = (islands.Excess, islands.GainOf(other));
            islands.Add(other);
            Assert.Equal(before - islands.Excess, gain, Rounding);
            Assert.Equal(axis.Figures(axis.Reaches).MeanExcess - axis.Figures([.. axis.Reaches, other]).MeanExcess, gain, Rounding);
        }
    }

    [Fact]
    public void Asking_for_a_gain_changes_nothing()
    {
        foreach (var (axis, other) in AxesAndOthers())
        {
            var islands = axis.Islands(axis.Reaches);
            _ = islands.GainOf(other);
            AssertFigures(axis.Figures(axis.Reaches), islands);
        }
    }

    [Fact]
    public void A_gain_is_never_negative_and_only_shrinks_as_more_is_added()
    {
        foreach (var (axis, other) in AxesAndOthers())
        {
            var islands = axis.Islands();
            var least = islands.GainOf(other);
            foreach (var reach in axis.Reaches)
            {
                islands.Add(reach);
                var gain = islands.GainOf(other);
                Assert.InRange(gain, -Rounding, least + Rounding);
                least = Math.Min(least, gain);
            }
        }
    }

    [Fact]
    public void What_is_there_already_gains_nothing_more()
    {
        foreach (var axis in AxisDraw.Many(Axes, MostReaches))
        {
            var islands = axis.Islands(axis.Reaches);
            Assert.All(axis.Reaches, reach => Assert.Equal(0, islands.GainOf(reach), Rounding));
        }
    }

    /// <summary>All bounds on the excess rest on this.</summary>
    [Fact]
    public void Several_together_gain_at_most_the_sum_of_what_each_would()
    {
        foreach (var axis in AxisDraw.Many(Axes, MostReaches))
        {
            var random = new Random(axis.Reaches.Length);
            Reach[] more = [.. Enumerable.Range(0, 4).Select(_ => axis.Another(random))];
            var (islands, all) = (axis.Islands(axis.Reaches), axis.Islands([.. axis.Reaches, .. more]));
            Assert.True(islands.Excess - all.Excess <= more.Sum(islands.GainOf) + Rounding);
        }
    }

    [Fact]
    public void The_excess_weighs_as_the_axis_does()
    {
        foreach (var axis in AxisDraw.Many(Axes, MostReaches))
        {
            var heavy = new Islands(axis.Shore with { Weight = 3 * axis.Shore.Weight });
            foreach (var reach in axis.Reaches)
            {
                heavy.Add(reach);
            }

            Assert.Equal(3 * axis.Figures(axis.Reaches).MeanExcess, heavy.Excess, 3 * Rounding);
        }
    }

    [Fact]
    public void A_copy_is_the_same_and_goes_its_own_way()
    {
        foreach (var (axis, other) in AxesAndOthers())
        {
            var copy = axis.Islands(axis.Another(new Random(0)), axis.Another(new Random(1)));
            copy = WithRoom(axis, copy);
            var original = axis.Islands(axis.Reaches);
            copy.CopyFrom(original);
            AssertFigures(axis.Figures(axis.Reaches), copy);
            copy.Add(other);
            AssertFigures(axis.Figures([.. axis.Reaches, other]), copy);
            AssertFigures(axis.Figures(axis.Reaches), original);
        }
    }

    [Fact]
    public void Cleared_it_is_as_new()
    {
        foreach (var (axis, other) in AxesAndOthers())
        {
            var islands = axis.Islands(axis.Reaches);
            islands.Clear();
            AssertFigures(axis.Figures(), islands);
            islands.Add(other);
            AssertFigures(axis.Figures(other), islands);
        }
    }

    private static IEnumerable<(AxisDraw Axis, Reach Other)> AxesAndOthers() =>
        AxisDraw.Many(Axes, MostReaches).Select((axis, seed) => (axis, axis.Another(new Random(seed))));

    /// <summary>A copy into islands that hold something else already.</summary>
    private static Islands WithRoom(AxisDraw axis, Islands content)
    {
        var islands = new Islands(axis.Shore);
        islands.CopyFrom(content);
        return islands;
    }

    private static void AssertFigures(LadderFigures expected, Islands islands)
    {
        Assert.Equal(expected.MeanExcess, islands.Excess, Rounding);
        Assert.Equal(expected.LargestStep.Ln, islands.LargestStep().Ln, Rounding);
    }
}
