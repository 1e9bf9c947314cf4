namespace Evenstep.Service.Answering.Recommendations;

/// <summary>For each of three inputs the interval around its value in which the same is bought; null where the work limit came first, and then a note
/// `holds-while-not-decided` names it.</summary>
internal sealed record HoldsWhileAnswer
{
    /// <summary>The seeing, in arcseconds.</summary>
    public required HoldingIntervalAnswer? SeeingArcsec { get; init; }

    /// <summary>The observer's dark-adapted pupil, in mm.</summary>
    public required HoldingIntervalAnswer? PupilMm { get; init; }

    /// <summary>The budget, in the catalogue's currency.</summary>
    public required HoldingIntervalAnswer? Budget { get; init; }
}

/// <summary>The widest interval around the value given in which every value tried makes the same purchases best.</summary>
internal sealed record HoldingIntervalAnswer
{
    /// <summary>The lowest value of it.</summary>
    public required decimal From { get; init; }

    /// <summary>The highest value of it.</summary>
    public required decimal To { get; init; }

    /// <summary>How many values were tried beside the one given: on each side from there up to the first with other purchases.</summary>
    public required int Tried { get; init; }

    /// <summary>What would be bought just below it; null if nothing else would, as far as was tried.</summary>
    public required OtherPurchasesAnswer? Below { get; init; }

    /// <summary>What would be bought just above it; null if nothing else would, as far as was tried.</summary>
    public required OtherPurchasesAnswer? Above { get; init; }
}

/// <summary>How a planning with another value of an input ended.</summary>
internal enum ChangedOutcome
{
    Optimal,
    NothingWorthwhile,
    Infeasible,
    EmptyRange,
}

/// <summary>What is best at another value of an input.</summary>
internal sealed record OtherPurchasesAnswer
{
    /// <summary>The value.</summary>
    public required decimal Value { get; init; }

    /// <summary>How the planning ended with it. `infeasible`: no set is allowed. `empty-range`: no useful power is left to plan for.</summary>
    public required ChangedOutcome Outcome { get; init; }

    /// <summary>What would be bought, by id in ordinal order; empty also where no set is allowed, or no useful power is left.</summary>
    public required IReadOnlyList<string> ItemIds { get; init; }

    /// <summary>Of all of it; null where no set is allowed, or no useful power is left.</summary>
    public required decimal? TotalPrice { get; init; }
}
