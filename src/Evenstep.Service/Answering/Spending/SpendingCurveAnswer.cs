using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Spending;

/// <summary>What every budget up to the one given buys at best, in largest steps.</summary>
internal sealed record SpendingCurveAnswer
{
    /// <summary>`optimal`: every point is proved. `best-found`: the work limit came first. `infeasible`: no set is allowed.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>The catalogue that the answer rests on.</summary>
    public required CatalogueAnswer Catalogue { get; init; }

    /// <summary>The currency of all money, by ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>The points, cheapest first: each with narrower steps than the one before it. Empty if no set is allowed.</summary>
    public required IReadOnlyList<SpendingPointAnswer> Points { get; init; }

    /// <summary>What else is worth knowing.</summary>
    public required IReadOnlyList<RemarkAnswer> Notes { get; init; }

    /// <summary>Why no set of purchases is allowed; null unless infeasible.</summary>
    public required ConflictsAnswer? Conflicts { get; init; }

    /// <summary>Warnings, for the kit of the suggested point; that of the Sun is always there.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }

    /// <summary>What was proved.</summary>
    public required SpendingSolverAnswer Solver { get; init; }
}

/// <summary>The best kit for its price: no allowed set is at once no dearer and narrower in its largest step.</summary>
internal sealed record SpendingPointAnswer
{
    /// <summary>Of its purchases.</summary>
    public required decimal TotalPrice { get; init; }

    /// <summary>The largest step with the purchases; null where there is nothing to look through.</summary>
    public required double? LargestStep { get; init; }

    /// <summary>The mean mismatch with the purchases, in percent; null where there is nothing to look through.</summary>
    public required double? MeanMismatchPercent { get; init; }

    /// <summary>The mean excess with the purchases, in percent; null where there is nothing to look through.</summary>
    public required double? MeanExcessPercent { get; init; }

    /// <summary>The share of the useful powers that the kit serves, in percent.</summary>
    public required double ServedPercent { get; init; }

    /// <summary>The share of the useful powers near which nothing speaks against some view, in percent.</summary>
    public required double ComfortablePercent { get; init; }

    /// <summary>The ids of what is bought, in ordinal order.</summary>
    public required IReadOnlyList<string> ItemIds { get; init; }

    /// <summary>Whether this is the knee of the curve; true of one point.</summary>
    public required bool Suggested { get; init; }
}

/// <summary>What was proved, and how long it took.</summary>
internal sealed record SpendingSolverAnswer
{
    /// <summary>Whether every point is proved.</summary>
    public required bool Proved { get; init; }

    /// <summary>The price up to which the points are proved: the budget, unless the work limit came first; null if it came
    /// before any price was.</summary>
    public required decimal? ProvedUpTo { get; init; }

    /// <summary>Which limit ended the work before all was decided: `work` or `memory`; null if none did.</summary>
    public required ReachedLimit? Limit { get; init; }

    /// <summary>How long the solve took that made this answer; an equal request may be given the same answer again.</summary>
    public required double Milliseconds { get; init; }
}
