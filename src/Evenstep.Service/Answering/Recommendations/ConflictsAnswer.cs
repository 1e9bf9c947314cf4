using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Why no set of purchases is allowed.</summary>
internal sealed record ConflictsAnswer
{
    /// <summary>The demands that conflict: without any one of them the rest could be met.</summary>
    public required IReadOnlyList<RemarkAnswer> Demands { get; init; }

    /// <summary>For each limit the value that alone would make a set possible.</summary>
    public required NearestAnswer Nearest { get; init; }

    /// <summary>What the work did not suffice to decide: names of the limits in `nearest` whose value is not known (`mustFrame/0` for the first
    /// framing), and `demands` if fewer of the demands may conflict than are named. Empty if all is decided.</summary>
    public required IReadOnlyList<string> Undecided { get; init; }
}

/// <summary>
/// For each limit the value nearest to the one given that alone would make a set possible; null where none would, and where `undecided` names it.
/// </summary>
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

    /// <summary>What one item may cost; null also where that is not limited.</summary>
    public required decimal? MaxPricePerItem { get; init; }

    /// <summary>What one item may weigh, in grams; null also where that is not limited.</summary>
    public required double? MaxItemMassGrams { get; init; }

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
