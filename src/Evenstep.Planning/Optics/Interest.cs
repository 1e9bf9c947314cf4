using System.Collections.Immutable;

namespace Evenstep.Planning.Optics;

/// <summary>What an observer likes to look at.</summary>
public enum Interest
{
    LargeNebulae,
    Galaxies,
    StarClusters,
    PlanetaryNebulae,
    Moon,
    Planets,
    DoubleStars,
}

/// <summary>
/// A stretch of exit pupils with the weight its powers carry. Coarse steps do at low power, where the view is wide and
/// the sky bright; finer ones are wanted at high power, where the air decides each night. Common practice, no source.
/// </summary>
/// <param name="NarrowestExitPupilMm">Where the zone ends towards high power; it reaches up to the zone before it.</param>
/// <param name="Weight">The weight of the zone when it matters.</param>
/// <param name="Interests">What it matters to.</param>
public sealed record Zone(double NarrowestExitPupilMm, double Weight, ImmutableArray<Interest> Interests)
{
    /// <summary>From low power to high.</summary>
    public static readonly ImmutableArray<Zone> All =
    [
        new(4, 0.6, [Interest.LargeNebulae]),
        new(2, 0.9, [Interest.Galaxies, Interest.StarClusters]),
        new(1, 1.0, [Interest.StarClusters, Interest.PlanetaryNebulae, Interest.Moon, Interest.Planets]),
        new(0, 1.0, [Interest.PlanetaryNebulae, Interest.Moon, Interest.Planets, Interest.DoubleStars]),
    ];

    /// <summary>What a zone that matters less weighs at the least: common practice, no source.</summary>
    private const double LeastWeight = 0.45;

    /// <summary>The weight for an observer of these things: half, if none of them needs the zone, but at least
    /// <see cref="LeastWeight"/>; whole, if none is named.</summary>
    public double WeightFor(ImmutableArray<Interest> observes) =>
        observes.IsEmpty || observes.Any(Interests.Contains) ? Weight : Math.Max(Weight / 2, LeastWeight);
}
