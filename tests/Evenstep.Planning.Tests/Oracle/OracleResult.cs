namespace Evenstep.Planning.Tests.Oracle;

public enum OracleOutcome
{
    Solved,
    Infeasible,
}

/// <summary>
/// The figures of one telescope or of the whole kit, before any rounding or conversion to percent.
/// Without a usable view they hold the values that the choice counts with: 2U, U, max(0, U − e) and 0.
/// </summary>
public sealed record OracleFigures(
    bool HasUsableView,
    double LnLargestStep,
    double MeanMismatch,
    double MeanExcess,
    double ServedShare)
{
    public double LargestStep => Math.Exp(LnLargestStep);
}

/// <summary>The figures of a kit, and of each telescope in the order of the request.</summary>
public sealed record OracleKitFigures(OracleFigures Kit, IReadOnlyList<OracleFigures> Telescopes);

/// <summary>A set of purchases; the ids are in ordinal order.</summary>
public sealed record OraclePlan(
    IReadOnlyList<string> Ids,
    decimal Price,
    double PreferenceValue,
    OracleKitFigures Figures,
    bool IsAllowed);

/// <summary>For each limit the nearest value that would alone make an allowed set possible.</summary>
public sealed record OracleNearest(
    decimal? Budget,
    int? MaxPurchases,
    int? MaxBarlows,
    int? AllowedOverlaps,
    IReadOnlyList<double?> MustFrame)
{
    /// <summary>Null also where what one item may cost is not limited.</summary>
    public decimal? MaxPricePerItem { get; init; }

    /// <summary>Null also where what one item may weigh is not limited.</summary>
    public double? MaxItemMassGrams { get; init; }
}

public sealed record OracleResult
{
    public required OracleOutcome Outcome { get; init; }

    /// <summary>Item id to the code of the first exclusion that applies; candidates are absent.</summary>
    public required IReadOnlyDictionary<string, string> Exclusions { get; init; }

    /// <summary>The kit as it is owned, whether or not buying nothing is allowed.</summary>
    public required OracleKitFigures BuyNothing { get; init; }

    /// <summary>How many sets obey the five rules, the wish aside.</summary>
    public required int AllowedSetCount { get; init; }

    /// <summary>Whether the observer wishes a wide view and anything gives one to measure it by.</summary>
    public required bool WishAsked { get; init; }

    /// <summary>Whether some allowed set grants the wish, so that only such sets stood for election.</summary>
    public required bool WishGranted { get; init; }

    /// <summary>exp L*; null when infeasible, as are the four that follow.</summary>
    public double? LeastLargestStep { get; init; }

    public double? LeastMeanExcess { get; init; }

    public double? BestPreferenceValue { get; init; }

    public decimal? BestPrice { get; init; }

    public int? BestCount { get; init; }

    /// <summary>Every set that ties for the best, in ordinal order; empty when infeasible.</summary>
    public IReadOnlyList<OraclePlan> BestSets { get; init; } = [];

    public bool BuyingNothingIsBest => BestSets.Any(plan => plan.Ids.Count == 0);

    /// <summary>Null unless infeasible.</summary>
    public OracleNearest? Nearest { get; init; }
}
