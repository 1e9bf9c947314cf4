namespace Evenstep.Planning.Tests.Oracle;

public enum OracleKind
{
    Eyepiece,
    Zoom,
    Barlow,
}

public enum OracleBarrel
{
    Inch0965,
    Inch125,
    Inch2,
}

public enum OracleInterest
{
    LargeNebulae,
    Galaxies,
    StarClusters,
    PlanetaryNebulae,
    Moon,
    Planets,
    DoubleStars,
}

public enum OracleUse
{
    Allow,
    Avoid,
}

public enum OraclePrefer
{
    Comfort,
    LowPrice,
    WideField,
    LongEyeRelief,
    LightWeight,
    Parfocal,
}

/// <summary>A recommendation request, field by field; null means the default.</summary>
public sealed record OracleProblem
{
    public required IReadOnlyList<OracleTelescope> Telescopes { get; init; }

    public OracleObserver Observer { get; init; } = new();

    public double? SeeingArcsec { get; init; }

    public IReadOnlyList<OracleOwned> Owned { get; init; } = [];

    public required IReadOnlyList<OracleItem> Catalogue { get; init; }

    public required OracleLimits Limits { get; init; }

    public OraclePreferences Preferences { get; init; } = new();

    /// <summary>Definitions to solve without, so that a test can tell whether one of them decides the answer.</summary>
    public OracleDefinitions Without { get; init; }

    internal bool Has(OracleDefinitions definition) => (Without & definition) == 0;
}

public sealed record OracleTelescope
{
    public required string Name { get; init; }

    public required double ApertureMm { get; init; }

    public required double FocalLengthMm { get; init; }

    public required OracleBarrel FocuserBarrel { get; init; }

    public double? LowestPower { get; init; }

    public double? HighestPower { get; init; }
}

public sealed record OracleObserver
{
    public int? Age { get; init; }

    public double? PupilMm { get; init; }

    public bool WearsSpectacles { get; init; }

    public double? AstigmatismDioptres { get; init; }

    public double? LeastEyeReliefMm { get; init; }

    public IReadOnlyList<OracleInterest> Observes { get; init; } = [];
}

/// <summary>An owned item in full, or with a null <paramref name="Item"/> the catalogue item of that id.</summary>
public sealed record OracleOwned(string Id, OracleItem? Item);

public sealed record OracleLimits
{
    public required decimal Budget { get; init; }

    public int? MaxPurchases { get; init; }

    public int? MaxBarlows { get; init; }

    public decimal? MaxPricePerItem { get; init; }

    public double? MaxItemMassGrams { get; init; }

    public int? AllowedOverlaps { get; init; }
}

public sealed record OraclePreferences
{
    public OraclePrefer? Prefer { get; init; }

    public double? LeastStep { get; init; }

    public double? EnoughStep { get; init; }

    public double? LeastApparentFieldDeg { get; init; }

    public OracleUse? Barlows { get; init; }

    public OracleUse? Zooms { get; init; }

    public IReadOnlyList<string> MustInclude { get; init; } = [];

    public IReadOnlyList<string> Exclude { get; init; } = [];

    public IReadOnlyList<OracleFrame> MustFrame { get; init; } = [];

    /// <summary>The least power of the reticle asked for; null asks for none.</summary>
    public double? ReticleLeastPower { get; init; }
}

/// <summary>A field to frame, in the telescope of that name or with null in any.</summary>
public sealed record OracleFrame(string Name, double WidthDeg, string? Telescope);
