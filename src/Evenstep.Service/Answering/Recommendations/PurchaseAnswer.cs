using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

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

    /// <summary>The best plan when this item may not be bought; null unless asked for, or if none was found within the work limit.</summary>
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

    /// <summary>Of all purchases; null if infeasible, as are the figures.</summary>
    public required decimal? TotalPrice { get; init; }

    /// <summary>What to buy then, by id.</summary>
    public required IReadOnlyList<string> ItemIds { get; init; }

    /// <summary>As in the figures of the kit with these purchases.</summary>
    public required double? LargestStep { get; init; }

    /// <summary>As in the figures of the kit with these purchases.</summary>
    public required double? MeanMismatchPercent { get; init; }

    /// <summary>As in the figures of the kit with these purchases.</summary>
    public required double? ServedPercent { get; init; }

    /// <summary>As in the figures of the kit with these purchases.</summary>
    public required double? ComfortablePercent { get; init; }
}
