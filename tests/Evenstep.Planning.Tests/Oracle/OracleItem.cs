namespace Evenstep.Planning.Tests.Oracle;

public sealed record OracleItem
{
    public required string Id { get; init; }

    public required OracleKind Kind { get; init; }

    public required OracleBarrel Barrel { get; init; }

    /// <summary>Eyepieces only.</summary>
    public double FocalLengthMm { get; init; }

    /// <summary>Eyepieces only: what is stated; null where the apparent field is unknown.</summary>
    public double? StatedApparentFieldDeg { get; init; }

    /// <summary>Eyepieces only: what is stated, or else assumed.</summary>
    public double ApparentFieldDeg
    {
        get => StatedApparentFieldDeg ?? OracleAssumed.ApparentFieldDeg(this);
        init => StatedApparentFieldDeg = value;
    }

    /// <summary>Eyepieces only.</summary>
    public double? FieldStopMm { get; init; }

    /// <summary>Eyepieces only: the purpose is <c>reticle</c> and not <c>observing</c>.</summary>
    public bool IsReticle { get; init; }

    /// <summary>Eyepieces and zooms: what is stated; null where the eye relief is unknown, which only that of an eyepiece may be.</summary>
    public double? StatedEyeReliefMm { get; init; }

    /// <summary>Eyepieces and zooms: what is stated, or else assumed.</summary>
    public double EyeReliefMm
    {
        get => StatedEyeReliefMm ?? OracleAssumed.EyeReliefMm(this);
        init => StatedEyeReliefMm = value;
    }

    /// <summary>The steepest light cone that it is made for; null where unknown.</summary>
    public double? FastestFocalRatio { get; init; }

    /// <summary>Zooms only.</summary>
    public double ShortestFocalLengthMm { get; init; }

    /// <summary>Zooms only.</summary>
    public double LongestFocalLengthMm { get; init; }

    /// <summary>Zooms only.</summary>
    public double ApparentFieldAtShortestDeg { get; init; }

    /// <summary>Zooms only.</summary>
    public double ApparentFieldAtLongestDeg { get; init; }

    /// <summary>Barlows only.</summary>
    public IReadOnlyList<double> Factors { get; init; } = [];

    public string? ParfocalGroup { get; init; }

    public double? MassGrams { get; init; }

    /// <summary>Of an owned item given in full what it is worth, 0 where that is unknown.</summary>
    public decimal Price { get; init; }

    public bool InStock { get; init; } = true;
}
