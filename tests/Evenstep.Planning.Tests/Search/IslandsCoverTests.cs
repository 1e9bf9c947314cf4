using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>Which places of an axis are too far from everything, and what would mend that.</summary>
public class IslandsCoverTests
{
    private const int Axes = 2000;
    private const int MostReaches = 6;
    private const int RoomForAll = MostReaches + 2;

    /// <summary>Just beyond a place: far less than any two positions drawn are apart, far more than rounding.</summary>
    private const double JustBeyond = 1e-7;

    private const double Rounding = 1e-12;

    [Fact]
    public void A_place_is_uncovered_exactly_if_the_step_is_not_kept()
    {
        foreach (var (axis, half, _) in AxesAndSteps())
        {
            var isKept = axis.Figures(axis.Reaches).GreatestMismatch <= half;
            Assert.Equal(isKept, UncoveredPlaces(axis, half).Length == 0);
        }
    }

    [Fact]
    public void Up_to_an_uncovered_place_something_is_near_enough_and_just_beyond_it_nothing_is()
    {
        foreach (var (axis, half, _) in AxesAndSteps())
        {
            foreach (var place in UncoveredPlaces(axis, half))
            {
                Assert.True(place == 0 || Nearest(axis.Reaches, place) <= half + Rounding);
                Assert.True(Nearest(axis.Reaches, place + JustBeyond) > half);
            }
        }
    }

    [Fact]
    public void Every_gap_that_is_too_wide_has_one_uncovered_place()
    {
        foreach (var (axis, half, _) in AxesAndSteps())
        {
            Assert.Equal(StretchesOutOfReach(axis, half), UncoveredPlaces(axis, half).Length);
        }
    }

    [Fact]
    public void Where_there_is_no_room_for_all_places_the_first_are_given()
    {
        foreach (var (axis, half, _) in AxesAndSteps())
        {
            var all = UncoveredPlaces(axis, half);
            for (var room = 1; room <= all.Length; room++)
            {
                Assert.Equal(all[..room], UncoveredPlaces(axis, half, room));
            }
        }
    }

    [Fact]
    public void A_reach_covers_a_place_exactly_if_it_is_near_enough_to_what_lies_just_beyond()
    {
        foreach (var (axis, half, random) in AxesAndSteps())
        {
            foreach (var place in UncoveredPlaces(axis, half))
            {
                var reach = axis.Another(random);
                Assert.Equal(Nearest([reach], place + JustBeyond) <= half, Islands.Covers(reach, place, half));
            }
        }
    }

    /// <summary>So the search may branch on any of them.</summary>
    [Fact]
    public void What_keeps_to_the_step_covers_every_place_that_was_uncovered()
    {
        var kept = 0;
        foreach (var (axis, half, random) in AxesAndSteps())
        {
            Reach[] more = [.. Enumerable.Range(0, 4).Select(_ => axis.Another(random))];
            if (axis.Figures([.. axis.Reaches, .. more]).GreatestMismatch <= half)
            {
                kept++;
                Assert.All(UncoveredPlaces(axis, half), place => Assert.Contains(more, reach => Islands.Covers(reach, place, half)));
            }
        }

        Assert.True(kept > Axes / 4);
    }

    [Fact]
    public void A_place_that_is_covered_goes_away()
    {
        foreach (var (axis, half, random) in AxesAndSteps())
        {
            var reach = axis.Another(random);
            var before = UncoveredPlaces(axis, half);
            var after = UncoveredPlaces(axis with { Reaches = [.. axis.Reaches, reach] }, half);
            Assert.Equal(
                before.Where(place => !Islands.Covers(reach, place, half)),
                before.Where(place => after.Any(left => Math.Abs(left - place) <= Rounding)));
        }
    }

    private static IEnumerable<(AxisDraw Axis, double Half, Random Random)> AxesAndSteps() =>
        AxisDraw.Many(Axes, MostReaches).Select((axis, seed) =>
        {
            var random = new Random(seed);
            return (axis, axis.Half(random), random);
        });

    private static double[] UncoveredPlaces(AxisDraw axis, double half, int room = RoomForAll)
    {
        var places = new double[room];
        return places[..axis.Islands(axis.Reaches).Uncovered(half, places)];
    }

    private static double Nearest(Reach[] reaches, double position) => reaches
        .Select(reach => Math.Max(0, Math.Max(reach.From - position, position - reach.To)))
        .DefaultIfEmpty(double.PositiveInfinity)
        .Min();

    /// <summary>
    /// Counted by walking the axis: a stretch begins where what was near enough no longer is. With no reach at all the
    /// mismatch counts as the whole length, so that a step as wide as that is kept.
    /// </summary>
    private static int StretchesOutOfReach(AxisDraw axis, double half)
    {
        if (axis.Reaches.Length == 0)
        {
            return half < axis.Length ? 1 : 0;
        }

        double[] changes = [0, .. axis.Reaches.SelectMany(reach => new[] { reach.From - half, reach.To + half }).Order()];
        var (stretches, isNear) = (0, true);
        foreach (var change in changes.Where(change => change >= 0 && change < axis.Length))
        {
            var wasNear = isNear;
            isNear = Nearest(axis.Reaches, change + JustBeyond) <= half;
            stretches += wasNear && !isNear ? 1 : 0;
        }

        return stretches;
    }
}
