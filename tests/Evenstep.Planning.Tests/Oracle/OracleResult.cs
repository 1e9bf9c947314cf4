namespace Evenstep.Planning.Tests.Oracle;

public enum OracleOutcome
{
    Solved,
    Infeasible,
}

/// <summary>
/// The figures of one telescope or of the whole kit, before any rounding or conversion to percent.
/// Without a usable view they hold the values that the choice counts with: 2U, U, max(0, U − e), 0 and 0.
/// </summary>
public sealed record OracleFigures(
    bool HasUsableView,
    double LnLargestStep,
    double MeanMismatch,
    double MeanExcess,
    double ServedShare,
    double ComfortableShare)
{
    public double LargestStep => Math.Exp(LnLargestStep);
}

/// <summary>The figures of a kit over all telescopes, of each in the order of the request, and over those that count in choosing.</summary>
public sealed record OracleKitFigures(OracleFigures Kit, IReadOnlyList<OracleFigures> Telescopes, OracleFigures Counting);

/// <summary>A set of purchases; the ids are in ordinal order. The preference is that of stage 4.</summary>
public sealed record OraclePlan(
    IReadOnlyList<string> Ids,
    decimal Price,
    double PreferenceValue,
    OracleKitFigures Figures,
    bool IsAllowed)
{
    /// <summary>Q, by the step that the election allows; null where there was none, or none in which quality counts.</summary>
    public double? Quality { get; init; }
}

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

    /// <summary>The names of the telescopes that stand aside, for owned items and candidates together can make no usable view there.</summary>
    public IReadOnlyList<string> StandingAside { get; init; } = [];

    /// <summary>Whether the observer wishes a wide view and anything gives one to measure it by.</summary>
    public bool WishAsked { get; init; }

    /// <summary>Whether some set kept by stage 1 grants the wish, so that only such sets went on.</summary>
    public bool WishGranted { get; init; }

    /// <summary>The true field wished for; 0 without a wish.</summary>
    public double WishedFieldDeg { get; init; }

    /// <summary>exp L*, never under the step that is enough; null when infeasible, as are the five that follow.</summary>
    public double? LeastLargestStep { get; init; }

    public double? LeastMeanExcess { get; init; }

    /// <summary>Q*; null also where quality does not count.</summary>
    public double? BestQuality { get; init; }

    /// <summary>The least total mass or number of parfocal groups, where one of them is preferred; else 0.</summary>
    public double? BestPreferenceValue { get; init; }

    public decimal? BestPrice { get; init; }

    public int? BestCount { get; init; }

    /// <summary>Every set that ties for the best, in ordinal order; empty when infeasible.</summary>
    public IReadOnlyList<OraclePlan> BestSets { get; init; } = [];

    public bool BuyingNothingIsBest => BestSets.Any(plan => plan.Ids.Count == 0);

    /// <summary>Null unless infeasible.</summary>
    public OracleNearest? Nearest { get; init; }
}
