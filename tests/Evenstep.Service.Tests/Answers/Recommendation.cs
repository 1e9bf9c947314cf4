using System.Text.Json;

namespace Evenstep.Service.Tests.Answers;

/// <summary>What a client reads of a recommendation.</summary>
internal sealed record Recommendation(
    string Outcome, CatalogueVersion Catalogue, string Currency, decimal? TotalPrice, IReadOnlyList<Purchase> Purchases, IReadOnlyList<string> Spare,
    IReadOnlyList<string>? SpareTogether, HoldsWhile? HoldsWhile, Figures Before, Figures? After, double? LeastLargestStep,
    IReadOnlyList<EquippedTelescope> Telescopes, IReadOnlyList<Framing> Demands,
    IReadOnlyList<Remark> Notes, JsonElement Excluded, Conflicts? Conflicts, IReadOnlyList<Remark> Cautions, Solver Solver)
{
    /// <summary>The excluded items, where the list of them was asked for.</summary>
    public IReadOnlyList<Exclusion> ListOfExcluded() => Reading.Read<IReadOnlyList<Exclusion>>(Excluded.GetRawText());

    /// <summary>How many items are excluded by reason, where the list of them was not asked for.</summary>
    public IReadOnlyDictionary<string, int> CountsOfExcluded() => Reading.Read<IReadOnlyDictionary<string, int>>(Excluded.GetRawText());

    /// <summary>The same answer as if it had taken no time.</summary>
    public Recommendation WithoutTime() => this with { Solver = Solver with { Milliseconds = 0 } };
}

internal sealed record CatalogueVersion(string? Id, string? Version);

internal sealed record Purchase(
    string ItemId, string? Name, string Kind, decimal Price, int Order, double? LargestStepWithoutIt, IReadOnlyList<Remark> Reasons, WithoutItem? IfUnavailable,
    string? Line, string? Url, string? Sku, string? Gtin, IReadOnlyDictionary<string, string>? Attributes);

internal sealed record WithoutItem(
    string Outcome, decimal? TotalPrice, IReadOnlyList<string> ItemIds, double? LargestStep, double? MeanMismatchPercent, double? ServedPercent,
    double? ComfortablePercent);

internal sealed record HoldsWhile(HoldingInterval? SeeingArcsec, HoldingInterval? PupilMm, HoldingInterval? Budget);

internal sealed record HoldingInterval(decimal From, decimal To, int Tried, OtherPurchases? Below, OtherPurchases? Above);

internal sealed record OtherPurchases(decimal Value, string Outcome, IReadOnlyList<string> ItemIds, decimal? TotalPrice);

internal sealed record EquippedTelescope(string Name, PowerRange PowerRange, Resolution Resolution, Ladder Before, Ladder? After);

internal sealed record Exclusion(string ItemId, string Reason, string Detail, JsonElement Values);

internal sealed record Conflicts(IReadOnlyList<Remark> Demands, NearestLimits Nearest, IReadOnlyList<string> Undecided);

internal sealed record NearestLimits(
    decimal? Budget, int? MaxPurchases, int? MaxBarlows, int? AllowedOverlaps, decimal? MaxPricePerItem,
    double? MaxItemMassGrams, IReadOnlyList<NearestFraming> MustFrame);

internal sealed record NearestFraming(string? Name, double? WidthDeg);

internal sealed record Solver(bool Proved, double? Bound, bool? Certified, string? Limit, double Milliseconds);
