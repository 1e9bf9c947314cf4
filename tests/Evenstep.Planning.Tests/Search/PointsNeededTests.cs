using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>The bound that ends a branch: how many points more an axis needs at the least.</summary>
public class PointsNeededTests
{
    private const int Axes = 2000;
    private const int MostReaches = 5;

    /// <summary>Points in a row, each a step on from the last, and never more than this many: every loop here ends.</summary>
    private const int MostPoints = 200;

    private const double Rounding = 1e-9;

    [Fact]
    public void It_is_none_exactly_if_the_step_is_kept()
    {
        foreach (var (axis, half) in AxesAndSteps())
        {
            var isKept = axis.Figures(axis.Reaches).GreatestMismatch <= half;
            Assert.Equal(isKept, axis.Islands(axis.Reaches).PointsNeeded(half) == 0);
        }
    }

    [Fact]
    public void It_is_never_more_than_a_row_of_points_that_keeps_to_the_step()
    {
        foreach (var (axis, half) in AxesAndSteps())
        {
            Reach[] row = [.. RowOfPoints(axis, half)];
            Assert.True(axis.Figures([.. axis.Reaches, .. row]).GreatestMismatch <= half + Rounding);
            Assert.InRange(axis.Islands(axis.Reaches).PointsNeeded(half), 0, row.Length);
        }
    }

    [Fact]
    public void One_point_makes_it_at_most_one_less()
    {
        foreach (var (axis, half) in AxesAndSteps())
        {
            var islands = axis.Islands(axis.Reaches);
            var before = islands.PointsNeeded(half);
            var at = axis.Another(new Random((int)before)).From;
            islands.Add(new Reach(at, at));
            Assert.InRange(islands.PointsNeeded(half), before - 1, before);
        }
    }

    /// <summary>With no step allowed only the tolerance is left of it.</summary>
    [Fact]
    public void However_small_the_step_the_points_needed_can_be_told() =>
        Assert.True(new Islands(new Shore(2.3, 0, 1 / 2.3)).PointsNeeded(5e-10) > int.MaxValue);

    private static IEnumerable<(AxisDraw Axis, double Half)> AxesAndSteps() =>
        AxisDraw.Many(Axes, MostReaches).Select((axis, seed) => (axis, axis.Half(new Random(seed))));

    /// <summary>Wherever the step is not kept, a point as far on as may be: no fewer points would do.</summary>
    private static IEnumerable<Reach> RowOfPoints(AxisDraw axis, double half)
    {
        var places = new double[1];
        List<Reach> reaches = [.. axis.Reaches];
        for (var i = 0; i < MostPoints && axis.Islands(reaches).Uncovered(half + Rounding, places) > 0; i++)
        {
            var at = Math.Min(places[0] + half - Rounding, axis.Length);
            reaches.Add(new Reach(at, at));
            yield return reaches[^1];
        }
    }
}
