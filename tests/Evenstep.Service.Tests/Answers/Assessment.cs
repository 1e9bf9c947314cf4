namespace Evenstep.Service.Tests.Answers;

/// <summary>What a client reads of an assessment.</summary>
internal sealed record Assessment(
    CatalogueVersion? Catalogue, Figures Kit, IReadOnlyList<AssessedTelescope> Telescopes, IReadOnlyList<string> Spare,
    IReadOnlyList<string>? SpareTogether, IReadOnlyList<Framing> Demands,
    IReadOnlyList<Remark> Notes, IReadOnlyList<Remark> Cautions);

internal sealed record AssessedTelescope(string Name, PowerRange PowerRange, Resolution Resolution, Ladder Ladder);

/// <summary>What a client reads of a second opinion.</summary>
internal sealed record SecondOpinion(ShoppingList List, Recommendation Advice, Difference Difference);

internal sealed record ShoppingList(
    decimal TotalPrice, Figures After, IReadOnlyList<AssessedTelescope> Telescopes,
    IReadOnlyList<Remark> Breaches, IReadOnlyDictionary<string, string> Exclusions,
    IReadOnlyList<Framing> Demands, IReadOnlyList<Remark> Cautions);

internal sealed record Difference(decimal? TotalPrice, double? LargestStep, double? MeanMismatchPercent, double? ServedPercent, double? ComfortablePercent);

/// <summary>What a client reads of what an item does in a telescope.</summary>
internal sealed record ItemMatch(
    CatalogueVersion Catalogue, string Currency, MatchedItem Item, MatchedTelescope Telescope, Remark Verdict, IReadOnlyList<View> Views,
    IReadOnlyList<Overlap> Repeats, Step? Fills, Figures Before, Figures After, IReadOnlyList<Remark> Notes, IReadOnlyList<Remark> Cautions);

internal sealed record MatchedItem(string ItemId, string? Name, string Kind, decimal Price, bool InStock);

internal sealed record MatchedTelescope(string Name, PowerRange PowerRange, Resolution Resolution);

/// <summary>What a client reads of the known targets.</summary>
internal sealed record KnownTargets(IReadOnlyList<ListedTarget> Targets, IReadOnlyList<Remark> Sources);

internal sealed record ListedTarget(string Id, string Name, string? CommonName, string Kind, double WidthArcmin, string WidthFrom, double WantedExitPupilMm);
