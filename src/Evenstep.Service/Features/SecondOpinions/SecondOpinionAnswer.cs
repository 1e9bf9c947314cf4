using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>A shopping list judged beside the advice.</summary>
internal sealed record SecondOpinionAnswer
{
    /// <summary>What the list does.</summary>
    public required ListAnswer List { get; init; }

    /// <summary>The recommendation for the same request.</summary>
    public required RecommendationAnswer Advice { get; init; }

    /// <summary>The list's figures minus those of the advice.</summary>
    public required DifferenceAnswer Difference { get; init; }
}

/// <summary>What a shopping list does.</summary>
internal sealed record ListAnswer
{
    /// <summary>Of all items on the list.</summary>
    public required decimal TotalPrice { get; init; }

    /// <summary>The kit's figures with the list bought.</summary>
    public required FiguresAnswer After { get; init; }

    /// <summary>Each telescope with the list bought, in the order of the request.</summary>
    public required IReadOnlyList<AssessedTelescopeAnswer> Telescopes { get; init; }

    /// <summary>Every rule of an allowed set that the list breaks; a repetition of views is an entry of its own.</summary>
    public required IReadOnlyList<RemarkAnswer> Breaches { get; init; }

    /// <summary>The items of the list that are no candidates, by id, each with the first reason that applies.</summary>
    public required IReadOnlyDictionary<string, Excluded> Exclusions { get; init; }

    /// <summary>What had to fit into some view at once.</summary>
    public required IReadOnlyList<FramingAnswer> Demands { get; init; }

    /// <summary>Warnings; that of the Sun is always there.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }
}

/// <summary>The list's figures minus those of the advice; null where the advice is infeasible, or one of the two has no such figure.</summary>
internal sealed record DifferenceAnswer
{
    /// <summary>How much more the list costs.</summary>
    public required decimal? TotalPrice { get; init; }

    /// <summary>Of the largest steps.</summary>
    public required double? LargestStep { get; init; }

    /// <summary>Of the mean mismatches, in percentage points.</summary>
    public required double? MeanMismatchPercent { get; init; }

    /// <summary>Of the shares served, in percentage points.</summary>
    public required double? ServedPercent { get; init; }

    /// <summary>Of the comfortable shares, in percentage points.</summary>
    public required double? ComfortablePercent { get; init; }
}
