using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

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

    /// <summary>Ids of owned items, each of which alone could be given away without the kit serving less; empty if infeasible.</summary>
    public required IReadOnlyList<string> Spare { get; init; }

    /// <summary>Ids of owned items that could all be given away at once without the kit serving less: of the largest such sets the one
    /// whose known prices add up to most. Null if the work limit came first; empty if infeasible.</summary>
    public required IReadOnlyList<string>? SpareTogether { get; init; }

    /// <summary>How far some inputs may be otherwise without another purchase; null unless asked for, or if infeasible.</summary>
    public required HoldsWhileAnswer? HoldsWhile { get; init; }

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

/// <summary>What was proved, and how long it took.</summary>
internal sealed record SolverAnswer
{
    /// <summary>Whether nothing better exists.</summary>
    public required bool Proved { get; init; }

    /// <summary>A proven lower bound on the least largest step; null if infeasible.</summary>
    public required double? Bound { get; init; }

    /// <summary>True if a second, independent proof confirms the answer; null if none was asked for, or none could be made.</summary>
    public required bool? Certified { get; init; }

    /// <summary>Which limit ended the work before all was decided: `work` or `memory`; null if none did.</summary>
    public required ReachedLimit? Limit { get; init; }

    /// <summary>How long the solve took that made this answer; an equal request may be given the same answer again.</summary>
    public required double Milliseconds { get; init; }
}
