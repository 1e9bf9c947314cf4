using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

/// <summary>Zones and weights are common practice, no source.</summary>
public sealed class ZoneTests
{
    [Fact]
    public void The_zones_end_at_four_two_and_one_millimetres() =>
        Assert.Equal([4.0, 2.0, 1.0, 0.0], Zone.All.Select(zone => zone.NarrowestExitPupilMm));

    [Fact]
    public void An_observer_of_everything_weighs_every_zone_whole() => AssertWeights(0.6, 0.9, 1, 1);

    [Theory]
    [InlineData(Interest.LargeNebulae, 0.6, 0.45, 0.5, 0.5)]
    [InlineData(Interest.Galaxies, 0.45, 0.9, 0.5, 0.5)]
    [InlineData(Interest.StarClusters, 0.45, 0.9, 1, 0.5)]
    [InlineData(Interest.PlanetaryNebulae, 0.45, 0.45, 1, 1)]
    [InlineData(Interest.Moon, 0.45, 0.45, 1, 1)]
    [InlineData(Interest.Planets, 0.45, 0.45, 1, 1)]
    [InlineData(Interest.DoubleStars, 0.45, 0.45, 0.5, 1)]
    public void A_zone_that_no_interest_names_counts_half_but_at_least_45_hundredths(
        Interest interest, double fourAndMore, double twoToFour, double oneToTwo, double underOne) =>
        AssertWeights(fourAndMore, twoToFour, oneToTwo, underOne, interest);

    [Fact]
    public void Several_interests_are_taken_together() =>
        AssertWeights(0.6, 0.45, 0.5, 1, Interest.LargeNebulae, Interest.DoubleStars);

    private static void AssertWeights(
        double fourAndMore, double twoToFour, double oneToTwo, double underOne, params Interest[] observes) =>
        Assert.Equal([fourAndMore, twoToFour, oneToTwo, underOne], Zone.All.Select(zone => zone.WeightFor([.. observes])));
}
