using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Spending;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.BuyingPaths;

/// <summary>In what order to buy what, so that stopping early is regretted least.</summary>
internal sealed record BuyingPathAnswer
{
    /// <summary>`optimal`: no path is better, proved. `nothing-worthwhile`: the path is to buy nothing, proved. `best-found`: the
    /// work limit came first. `infeasible`: no set is allowed.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>The catalogue that the answer rests on.</summary>
    public required CatalogueAnswer Catalogue { get; init; }

    /// <summary>The currency of all money, by ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>Of all purchases; null if infeasible.</summary>
    public required decimal? TotalPrice { get; init; }

    /// <summary>The figures of what is owned.</summary>
    public required FiguresAnswer Before { get; init; }

    /// <summary>The purchases, in the order to buy them in.</summary>
    public required IReadOnlyList<BuyingStepAnswer> Steps { get; init; }

    /// <summary>The greatest loss after any purchase, in percent; 0 where nothing is bought, null if infeasible.</summary>
    public required double? GreatestLossPercent { get; init; }

    /// <summary>The least greatest loss that any path has, in percent; null if infeasible, or if the work limit came before it
    /// was known.</summary>
    public required double? LeastGreatestLossPercent { get; init; }

    /// <summary>The points of the spending curve, cheapest first: what the same money could have bought.</summary>
    public required IReadOnlyList<SpendingPointAnswer> ComparedWith { get; init; }

    /// <summary>What else is worth knowing.</summary>
    public required IReadOnlyList<RemarkAnswer> Notes { get; init; }

    /// <summary>Why no set of purchases is allowed; null unless infeasible.</summary>
    public required ConflictsAnswer? Conflicts { get; init; }

    /// <summary>Warnings, for the kit at the end of the path; that of the Sun is always there.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }

    /// <summary>What was proved.</summary>
    public required PathSolverAnswer Solver { get; init; }
}

/// <summary>One purchase on the path.</summary>
internal sealed record BuyingStepAnswer
{
    /// <summary>The item to buy.</summary>
    public required string ItemId { get; init; }

    /// <summary>What the shop calls it.</summary>
    public required string? Name { get; init; }

    /// <summary>What it costs.</summary>
    public required decimal Price { get; init; }

    /// <summary>What it and all before it cost.</summary>
    public required decimal TotalPriceSoFar { get; init; }

    /// <summary>The kit's figures with it.</summary>
    public required FiguresAnswer After { get; init; }

    /// <summary>By how much the largest step is now wider than the best that the same money could have bought, in percent; a
    /// step that is enough counts as such. 0 where no set of that price is allowed.</summary>
    public required double LossPercent { get; init; }

    /// <summary>The least largest step that the same money could have bought; null where no set of that price is allowed, or there
    /// would be nothing to look through.</summary>
    public required double? BestForTheMoney { get; init; }
}

/// <summary>What was proved, and how long it took.</summary>
internal sealed record PathSolverAnswer
{
    /// <summary>Whether no path is better.</summary>
    public required bool Proved { get; init; }

    /// <summary>Which limit ended the work before all was decided: `work` or `memory`; null if none did.</summary>
    public required ReachedLimit? Limit { get; init; }

    /// <summary>How long the solve took that made this answer; an equal request may be given the same answer again.</summary>
    public required double Milliseconds { get; init; }
}
