using System.Text.Json.Nodes;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Kits;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Recommendations;

/// <summary>What to buy, and what it does.</summary>
internal sealed record RecommendationAnswer
{
    /// <summary>How the planning ended.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>The catalogue that the answer rests on.</summary>
    public required CatalogueAnswer Catalogue { get; init; }

    /// <summary>The currency of all money, by ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>Of all purchases; null if infeasible.</summary>
    public required decimal? TotalPrice { get; init; }

    /// <summary>What to buy, in the order to buy it in when the money comes bit by bit.</summary>
    public required IReadOnlyList<PurchaseAnswer> Purchases { get; init; }

    /// <summary>The figures of what is owned.</summary>
    public required FiguresAnswer Before { get; init; }

    /// <summary>The figures with the purchases; null if infeasible.</summary>
    public required FiguresAnswer? After { get; init; }

    /// <summary>The least largest step attainable, never below `enoughStep`; null if infeasible.</summary>
    public required double? LeastLargestStep { get; init; }

    /// <summary>Each telescope, in the order of the request.</summary>
    public required IReadOnlyList<EquippedTelescopeAnswer> Telescopes { get; init; }

    /// <summary>What had to fit into some view at once; judged by what is owned, if infeasible.</summary>
    public required IReadOnlyList<FramingAnswer> Demands { get; init; }

    /// <summary>What else is worth knowing.</summary>
    public required IReadOnlyList<RemarkAnswer> Notes { get; init; }

    /// <summary>The items that are no candidates: how many by reason, or the list of them.</summary>
    public required ExcludedAnswer Excluded { get; init; }

    /// <summary>Why no set of purchases is allowed; null unless infeasible.</summary>
    public required ConflictsAnswer? Conflicts { get; init; }

    /// <summary>Warnings; that of the Sun is always there.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }

    /// <summary>What was proved.</summary>
    public required SolverAnswer Solver { get; init; }
}

/// <summary>An item to buy.</summary>
internal sealed record PurchaseAnswer
{
    /// <summary>Its id in the catalogue.</summary>
    public required string ItemId { get; init; }

    /// <summary>Its name in the catalogue.</summary>
    public required string? Name { get; init; }

    /// <summary>What it is.</summary>
    public required ItemKind Kind { get; init; }

    /// <summary>Its price.</summary>
    public required decimal Price { get; init; }

    /// <summary>From 1: when to buy it.</summary>
    public required int Order { get; init; }

    /// <summary>The kit's largest step if this one item were not bought.</summary>
    public required double? LargestStepWithoutIt { get; init; }

    /// <summary>Why it is in the plan.</summary>
    public required IReadOnlyList<RemarkAnswer> Reasons { get; init; }

    /// <summary>The best plan when this item may not be bought; null unless asked for.</summary>
    public required WithoutItemAnswer? IfUnavailable { get; init; }

    /// <summary>Its line, as the catalogue gives it.</summary>
    public required string? Line { get; init; }

    /// <summary>Its page, as the catalogue gives it.</summary>
    public required string? Url { get; init; }

    /// <summary>Its stock number, as the catalogue gives it.</summary>
    public required string? Sku { get; init; }

    /// <summary>Its global trade item number, as the catalogue gives it.</summary>
    public required string? Gtin { get; init; }

    /// <summary>The shop's own texts, as the catalogue gives them.</summary>
    public required IReadOnlyDictionary<string, string>? Attributes { get; init; }
}

/// <summary>The best plan without one item.</summary>
internal sealed record WithoutItemAnswer
{
    /// <summary>How that planning ended.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Of all purchases.</summary>
    public required decimal? TotalPrice { get; init; }

    /// <summary>What to buy then.</summary>
    public required IReadOnlyList<string> ItemIds { get; init; }

    /// <summary>As in the figures of a kit.</summary>
    public required double? LargestStep { get; init; }

    /// <summary>As in the figures of a kit.</summary>
    public required double? MeanMismatchPercent { get; init; }

    /// <summary>As in the figures of a kit.</summary>
    public required double? ServedPercent { get; init; }
}

/// <summary>What the purchases change in one telescope.</summary>
internal sealed record EquippedTelescopeAnswer
{
    /// <summary>As the request names it, or made up from its place.</summary>
    public required string Name { get; init; }

    /// <summary>The powers it can use.</summary>
    public required PowerRangeAnswer PowerRange { get; init; }

    /// <summary>The finest detail its aperture shows.</summary>
    public required ResolutionAnswer Resolution { get; init; }

    /// <summary>What it shows through what is owned.</summary>
    public required LadderAnswer Before { get; init; }

    /// <summary>What it shows with the purchases; null if infeasible.</summary>
    public required LadderAnswer? After { get; init; }
}

/// <summary>An item that is no candidate.</summary>
internal sealed record ExclusionAnswer
{
    /// <summary>Its id in the catalogue.</summary>
    public required string ItemId { get; init; }

    /// <summary>The first reason that applies.</summary>
    public required Excluded Reason { get; init; }

    /// <summary>The reason in words, in the language of the answer.</summary>
    public required string Detail { get; init; }

    /// <summary>What the words are about, by name.</summary>
    public required JsonObject Values { get; init; }
}

/// <summary>Why no set of purchases is allowed.</summary>
internal sealed record ConflictsAnswer
{
    /// <summary>The demands that conflict: without any one of them the rest could be met.</summary>
    public required IReadOnlyList<RemarkAnswer> Demands { get; init; }

    /// <summary>For each limit the value that alone would make a set possible.</summary>
    public required NearestAnswer Nearest { get; init; }
}

/// <summary>For each limit the value nearest to the one given that alone would make a set possible; null where none would.</summary>
internal sealed record NearestAnswer
{
    /// <summary>A budget.</summary>
    public required decimal? Budget { get; init; }

    /// <summary>A number of purchases.</summary>
    public required int? MaxPurchases { get; init; }

    /// <summary>A number of Barlows.</summary>
    public required int? MaxBarlows { get; init; }

    /// <summary>A number of overlaps.</summary>
    public required int? AllowedOverlaps { get; init; }

    /// <summary>A width for each demand to frame something, in the order of the request.</summary>
    public required IReadOnlyList<NearestFramingAnswer> MustFrame { get; init; }
}

/// <summary>A width that could be framed.</summary>
internal sealed record NearestFramingAnswer
{
    /// <summary>What was to be framed, as the request names it.</summary>
    public required string? Name { get; init; }

    /// <summary>In degrees.</summary>
    public required double? WidthDeg { get; init; }
}

/// <summary>What was proved, and how long it took.</summary>
internal sealed record SolverAnswer
{
    /// <summary>Whether nothing better exists.</summary>
    public required bool Proved { get; init; }

    /// <summary>A proven lower bound on the least largest step; null if infeasible.</summary>
    public required double? Bound { get; init; }

    /// <summary>Whether a second, independent proof agrees; null unless asked for.</summary>
    public required bool? Certified { get; init; }

    /// <summary>How long solving took.</summary>
    public required double Milliseconds { get; init; }
}
