namespace Evenstep.Service.Tests.Answers;

/// <summary>What a client reads of a spending curve.</summary>
internal sealed record SpendingCurve(
    string Outcome, CatalogueVersion Catalogue, string Currency, IReadOnlyList<SpendingPoint> Points, IReadOnlyList<Remark> Notes, Conflicts? Conflicts,
    IReadOnlyList<Remark> Cautions, CurveSolver Solver);

internal sealed record SpendingPoint(
    decimal TotalPrice, double? LargestStep, double? MeanMismatchPercent, double? MeanExcessPercent, double ServedPercent, double ComfortablePercent,
    IReadOnlyList<string> ItemIds, bool Suggested);

internal sealed record CurveSolver(bool Proved, decimal? ProvedUpTo, string? Limit, double Milliseconds);

/// <summary>What a client reads of a buying path.</summary>
internal sealed record BuyingPath(
    string Outcome, CatalogueVersion Catalogue, string Currency, decimal? TotalPrice, Figures Before,
    IReadOnlyList<BuyingStep> Steps, double? GreatestLossPercent,
    double? LeastGreatestLossPercent, IReadOnlyList<SpendingPoint> ComparedWith, IReadOnlyList<Remark> Notes,
    Conflicts? Conflicts, IReadOnlyList<Remark> Cautions,
    PathSolver Solver);

internal sealed record BuyingStep(
    string ItemId, string? Name, decimal Price, decimal TotalPriceSoFar, Figures After, double LossPercent, double? BestForTheMoney);

internal sealed record PathSolver(bool Proved, string? Limit, double Milliseconds);
