using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

public sealed class PowerAxisTests
{
    private const double ApertureMm = 100;
    private const double Lowest = 16;
    private const double Highest = 220;

    /// <summary>Of a sum over <see cref="Steps"/> slices, each of which a weight may change within.</summary>
    private const double SumError = 1e-3;

    private const int Steps = 10_000;

    public static TheoryData<Interest[]> Observers => new()
    {
        Array.Empty<Interest>(),
        new[] { Interest.LargeNebulae },
        new[] { Interest.StarClusters },
        new[] { Interest.DoubleStars, Interest.Galaxies },
    };

    [Theory]
    [MemberData(nameof(Observers))]
    public void A_position_is_the_integral_of_the_weight(Interest[] observes)
    {
        var axis = Axis([.. observes]);
        var slice = Math.Log(Highest / Lowest) / Steps;
        var sum = 0.0;
        for (var i = 0; i < Steps; i++)
        {
            sum += WeightAt(Lowest * Math.Exp((i + 0.5) * slice), observes) * slice;
            Assert.Equal(sum, axis.PositionOf(Lowest * Math.Exp((i + 1) * slice)), SumError);
        }

        Assert.Equal(sum, axis.Length, SumError);
    }

    [Theory]
    [MemberData(nameof(Observers))]
    public void Positions_increase_without_a_jump(Interest[] observes)
    {
        const double GreatestWeight = 1;
        var axis = Axis([.. observes]);
        var slice = Math.Log(Highest / Lowest) / Steps;
        for (var i = 0; i < Steps; i++)
        {
            var rise = axis.PositionOf(Lowest * Math.Exp((i + 1) * slice)) - axis.PositionOf(Lowest * Math.Exp(i * slice));
            Assert.InRange(rise, double.Epsilon, (GreatestWeight * slice) + Tolerance.Value);
        }
    }

    [Theory]
    [MemberData(nameof(Observers))]
    public void The_power_at_a_position_undoes_the_position_of_a_power(Interest[] observes)
    {
        var axis = Axis([.. observes]);
        for (var power = Lowest; power <= Highest; power *= 1.03)
        {
            Assert.Equal(power, axis.PowerAt(axis.PositionOf(power)), power * Tolerance.Value);
        }
    }

    [Fact]
    public void Powers_and_positions_beyond_the_ends_are_cut_to_them()
    {
        var axis = Axis([]);
        Assert.Equal(0, axis.PositionOf(Lowest / 2));
        Assert.Equal(axis.Length, axis.PositionOf(Highest * 2));
        Assert.Equal(Lowest, axis.PowerAt(-1), Tolerance.Value);
        Assert.Equal(Highest, axis.PowerAt(axis.Length + 1), Highest * Tolerance.Value);
    }

    [Theory]
    [InlineData(20, 80, 0.6, 0.9, 1, 0)] // Ends at 1.25 mm: nothing lies under 1 mm.
    [InlineData(60, 90, 0, 0, 1, 0)] // All of it between 2 and 1 mm.
    [InlineData(50, 200, 0, 0, 1, 1)] // Begins exactly where a zone does.
    [InlineData(25, 100, 0, 0.9, 1, 0)]
    public void Zones_that_the_range_does_not_reach_add_nothing(
        double lowest, double highest, double fourAndMore, double twoToFour, double oneToTwo, double underOne)
    {
        double[] edges = [0, 25, 50, 100, double.PositiveInfinity];
        double[] weights = [fourAndMore, twoToFour, oneToTwo, underOne];
        var expected = weights.Select((weight, i) =>
            weight * Math.Log(Math.Max(1, Math.Min(edges[i + 1], highest) / Math.Max(edges[i], lowest)))).Sum();
        var axis = new PowerAxis(new PowerRange(lowest, RangeEnd.Request, highest, RangeEnd.Request), ApertureMm, []);

        Assert.Equal(expected, axis.Length, Tolerance.Value);
    }

    private static PowerAxis Axis(ImmutableArray<Interest> observes) =>
        new(new PowerRange(Lowest, RangeEnd.Request, Highest, RangeEnd.Request), ApertureMm, observes);

    /// <summary>The table of the planning model, written down a second time.</summary>
    private static double WeightAt(double power, Interest[] observes)
    {
        var (weight, interests) = (ApertureMm / power) switch
        {
            >= 4 => (0.6, new[] { Interest.LargeNebulae }),
            >= 2 => (0.9, [Interest.Galaxies, Interest.StarClusters]),
            >= 1 => (1.0, [Interest.StarClusters, Interest.PlanetaryNebulae, Interest.Moon, Interest.Planets]),
            _ => (1.0, [Interest.PlanetaryNebulae, Interest.Moon, Interest.Planets, Interest.DoubleStars]),
        };
        return observes.Length == 0 || observes.Intersect(interests).Any() ? weight : Math.Max(weight / 2, 0.45);
    }
}
