using System.Collections.Immutable;

namespace Evenstep.Planning.Advice;

/// <summary>What sort of thing a target is.</summary>
public enum TargetKind
{
    LargeNebula,
    OpenCluster,
    Galaxy,
    GlobularCluster,
    PlanetaryNebula,
    Moon,
    Planet,
    DoubleStar,
}

/// <summary>Where the width of a target comes from.</summary>
public enum WidthSource
{
    /// <summary>The data of d3-celestial: sizes as they are customary for looking. Taken wherever it has the object.</summary>
    D3Celestial,

    /// <summary>The OpenNGC database: the longer axis.</summary>
    OpenNgc,

    /// <summary>The middle between the least and the greatest apparent diameter, as seen from the Earth.</summary>
    MeanOfRange,

    /// <summary>Common practice, no source.</summary>
    CommonPractice,
}

/// <summary>A target that the adviser knows.</summary>
/// <param name="Id">Lower case with hyphens, the same in every language.</param>
/// <param name="Kind">What it is; decides the exit pupil wanted.</param>
/// <param name="WidthFrom">Where its width comes from.</param>
/// <param name="Target">The target, by its designation.</param>
public sealed record KnownTarget(string Id, TargetKind Kind, WidthSource WidthFrom, Target Target)
{
    /// <summary>What observers like to look at, by kind and roughly by width. The sizes were not measured at an eyepiece: how wide
    /// an object looks depends on the sky.</summary>
    public static readonly ImmutableArray<KnownTarget> All =
    [
        LargeNebula("veil", "NGC 6960 and NGC 6992", 210, WidthSource.OpenNgc),
        LargeNebula("ngc-7000", "NGC 7000", 120, WidthSource.OpenNgc),
        LargeNebula("m-8", "M 8", 90),
        LargeNebula("ngc-2237", "NGC 2237", 80, WidthSource.OpenNgc),
        LargeNebula("m-42", "M 42", 66),
        LargeNebula("ngc-6992", "NGC 6992", 60, WidthSource.OpenNgc),
        LargeNebula("m-17", "M 17", 46),
        LargeNebula("m-20", "M 20", 29),

        // A planetary nebula, but so large and faint that it is looked at like the others here: common practice, no source.
        LargeNebula("ngc-7293", "NGC 7293", 16.3, WidthSource.OpenNgc),

        OpenCluster("m-45", "M 45", 110),
        OpenCluster("m-44", "M 44", 95),
        OpenCluster("m-7", "M 7", 80),
        OpenCluster("double-cluster", "NGC 869 and NGC 884", 50, WidthSource.OpenNgc),
        OpenCluster("m-67", "M 67", 30),
        OpenCluster("m-35", "M 35", 28),
        OpenCluster("m-37", "M 37", 24),
        OpenCluster("m-11", "M 11", 14),

        Galaxy("m-31", "M 31", 190),
        Galaxy("m-33", "M 33", 71),

        // 37 arcminutes apart, and half the length of each on either side.
        Galaxy("m-81-82", "M 81 and M 82", 56, WidthSource.CommonPractice),
        Galaxy("m-101", "M 101", 29),
        Galaxy("ngc-253", "NGC 253", 26.8, WidthSource.OpenNgc),
        Galaxy("ngc-4565", "NGC 4565", 16.8, WidthSource.OpenNgc),
        Galaxy("m-51", "M 51", 11),
        Galaxy("m-64", "M 64", 10),
        Galaxy("m-104", "M 104", 9),

        GlobularCluster("ngc-104", "NGC 104", 31.8, WidthSource.OpenNgc),
        GlobularCluster("ngc-5139", "NGC 5139", 27, WidthSource.OpenNgc),
        GlobularCluster("m-22", "M 22", 24),
        GlobularCluster("m-13", "M 13", 17),
        GlobularCluster("m-5", "M 5", 17),
        GlobularCluster("m-3", "M 3", 16),

        PlanetaryNebula("m-27", "M 27", 8),
        PlanetaryNebula("m-97", "M 97", 3),
        PlanetaryNebula("m-57", "M 57", 1),
        PlanetaryNebula("ngc-6543", "NGC 6543", 0.9, WidthSource.OpenNgc),
        PlanetaryNebula("ngc-2392", "NGC 2392", 0.86, WidthSource.OpenNgc),
        PlanetaryNebula("ngc-7009", "NGC 7009", 0.7, WidthSource.OpenNgc),
        PlanetaryNebula("ngc-7662", "NGC 7662", 0.28, WidthSource.OpenNgc),

        BetweenDiameters("moon", "Moon", TargetKind.Moon, 29.4, 33.5),
        BetweenDiameters("jupiter", "Jupiter", TargetKind.Planet, 0.5, 0.84),
        BetweenDiameters("saturn", "Saturn", TargetKind.Planet, 0.25, 0.35),
        BetweenDiameters("mars", "Mars", TargetKind.Planet, 0.06, 0.42),

        DoubleStar("epsilon-lyrae", "Epsilon Lyrae", 3.47),
        DoubleStar("albireo", "Albireo", 0.58),
        DoubleStar("mizar", "Mizar", 0.24),
        DoubleStar("castor", "Castor", 0.09),
    ];

    /// <summary>The exit pupil, in mm, that shows things of a kind best: common practice, no source.</summary>
    public static double WantedExitPupilMm(TargetKind kind) => kind switch
    {
        TargetKind.LargeNebula => 5,
        TargetKind.OpenCluster => 3,
        TargetKind.Galaxy => 2.5,
        TargetKind.GlobularCluster => 1.5,
        TargetKind.PlanetaryNebula => 1,
        TargetKind.Moon => 1,
        TargetKind.Planet => 0.8,
        TargetKind.DoubleStar => 0.6,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "An unknown kind."),
    };

    private static KnownTarget LargeNebula(string id, string name, double arcmin, WidthSource from = WidthSource.D3Celestial) =>
        Of(id, name, TargetKind.LargeNebula, arcmin, from);

    private static KnownTarget OpenCluster(string id, string name, double arcmin, WidthSource from = WidthSource.D3Celestial) =>
        Of(id, name, TargetKind.OpenCluster, arcmin, from);

    private static KnownTarget Galaxy(string id, string name, double arcmin, WidthSource from = WidthSource.D3Celestial) =>
        Of(id, name, TargetKind.Galaxy, arcmin, from);

    private static KnownTarget GlobularCluster(string id, string name, double arcmin, WidthSource from = WidthSource.D3Celestial) =>
        Of(id, name, TargetKind.GlobularCluster, arcmin, from);

    private static KnownTarget PlanetaryNebula(string id, string name, double arcmin, WidthSource from = WidthSource.D3Celestial) =>
        Of(id, name, TargetKind.PlanetaryNebula, arcmin, from);

    /// <summary>Its width is the distance of its components.</summary>
    private static KnownTarget DoubleStar(string id, string name, double arcmin) =>
        Of(id, name, TargetKind.DoubleStar, arcmin, WidthSource.CommonPractice);

    private static KnownTarget BetweenDiameters(string id, string name, TargetKind kind, double leastArcmin, double greatestArcmin) =>
        Of(id, name, kind, (leastArcmin + greatestArcmin) / 2, WidthSource.MeanOfRange);

    private static KnownTarget Of(string id, string name, TargetKind kind, double arcmin, WidthSource from) =>
        new(id, kind, from, new Target(name, arcmin, WantedExitPupilMm(kind)));
}
