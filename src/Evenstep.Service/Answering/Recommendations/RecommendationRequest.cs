using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>A request for a recommendation as its JSON says it; null for what is missing or faulty.</summary>
internal sealed record RecommendationRequest
{
    public required KitRequest Kit { get; init; }

    public required LimitsRequest? Limits { get; init; }

    public required PreferencesRequest? Preferences { get; init; }

    public required ExplainRequest? Explain { get; init; }
}

internal sealed record LimitsRequest
{
    public required decimal? Budget { get; init; }

    public required int? MaxPurchases { get; init; }

    public required int? MaxBarlows { get; init; }

    public required decimal? MaxPricePerItem { get; init; }

    public required double? MaxItemMassGrams { get; init; }

    public required int? AllowedOverlaps { get; init; }
}

/// <summary>Whether a kind of item may be bought.</summary>
internal enum Allowing
{
    Allow,
    Avoid,
}

internal sealed record PreferencesRequest
{
    public required Prefer? Prefer { get; init; }

    public required double? LeastStep { get; init; }

    public required double? EnoughStep { get; init; }

    public required double? LeastApparentFieldDeg { get; init; }

    public required Allowing? Barlows { get; init; }

    public required Allowing? Zooms { get; init; }

    public required IReadOnlyList<string?>? MustInclude { get; init; }

    public required IReadOnlyList<string?>? Exclude { get; init; }

    public required IReadOnlyList<FramingRequest?>? MustFrame { get; init; }

    public required ReticleRequest? Reticle { get; init; }
}

internal sealed record ReticleRequest
{
    public required double? LeastPower { get; init; }
}

/// <summary>How the items that are no candidates are reported.</summary>
internal enum ExcludedAs
{
    Count,
    List,
}

internal sealed record ExplainRequest
{
    public required ExcludedAs? Excluded { get; init; }

    public required bool? Certify { get; init; }

    public required bool? IfUnavailable { get; init; }

    public required FlagOrList<TargetRequest>? Targets { get; init; }
}
