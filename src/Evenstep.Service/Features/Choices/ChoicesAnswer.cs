using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.Choices;

/// <summary>Several ways of weighing the same wishes, side by side.</summary>
internal sealed record ChoicesAnswer
{
    /// <summary>`optimal`: each choice is the best of its way, proved. `best-found`: the work limit came first. `infeasible`: no set is allowed.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>The catalogue that the answer rests on.</summary>
    public required CatalogueAnswer Catalogue { get; init; }

    /// <summary>The currency of all money, by ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>The choices, the cheapest first; ways that choose the same purchases are one. Empty if no set is allowed.</summary>
    public required IReadOnlyList<ChoiceAnswer> Choices { get; init; }

    /// <summary>The figures of what is owned.</summary>
    public required FiguresAnswer Before { get; init; }

    /// <summary>Each telescope, in the order of the request.</summary>
    public required IReadOnlyList<ChoicesInTelescopeAnswer> Telescopes { get; init; }

    /// <summary>What else is worth knowing, of the choice for comfort and of all of them.</summary>
    public required IReadOnlyList<RemarkAnswer> Notes { get; init; }

    /// <summary>Why no set of purchases is allowed; null unless infeasible.</summary>
    public required ConflictsAnswer? Conflicts { get; init; }

    /// <summary>Warnings, for the kits of all choices; that of the Sun is always there.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }

    /// <summary>What was proved.</summary>
    public required ChoicesSolverAnswer Solver { get; init; }
}

/// <summary>What one or several ways of weighing come to.</summary>
internal sealed record ChoiceAnswer
{
    /// <summary>The ways that choose these purchases.</summary>
    public required IReadOnlyList<ChoiceCode> Codes { get; init; }

    /// <summary>How the planning ended.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Of all purchases.</summary>
    public required decimal TotalPrice { get; init; }

    /// <summary>What to buy, in the order to buy it in when the money comes bit by bit.</summary>
    public required IReadOnlyList<ChosenItemAnswer> Purchases { get; init; }

    /// <summary>The figures with the purchases.</summary>
    public required FiguresAnswer After { get; init; }

    /// <summary>What there is more and less of than with `comfort`; empty for that itself.</summary>
    public required IReadOnlyList<RemarkAnswer> Differences { get; init; }
}

/// <summary>An item to buy.</summary>
internal sealed record ChosenItemAnswer
{
    /// <summary>Its id in the catalogue.</summary>
    public required string ItemId { get; init; }

    /// <summary>Its name in the catalogue.</summary>
    public required string? Name { get; init; }

    /// <summary>What it is.</summary>
    public required ItemKind Kind { get; init; }

    /// <summary>Its price.</summary>
    public required decimal Price { get; init; }

    /// <summary>From 1: when to buy it.</summary>
    public required int Order { get; init; }

    /// <summary>Its line, as the catalogue gives it.</summary>
    public required string? Line { get; init; }

    /// <summary>Its page, as the catalogue gives it.</summary>
    public required string? Url { get; init; }

    /// <summary>Its stock number, as the catalogue gives it.</summary>
    public required string? Sku { get; init; }

    /// <summary>Its global trade item number, as the catalogue gives it.</summary>
    public required string? Gtin { get; init; }

    /// <summary>The shop's own texts, as the catalogue gives them.</summary>
    public required IReadOnlyDictionary<string, string>? Attributes { get; init; }
}

/// <summary>What the choices do in one telescope.</summary>
internal sealed record ChoicesInTelescopeAnswer
{
    /// <summary>As the request names it, or made up from its place.</summary>
    public required string Name { get; init; }

    /// <summary>The powers it can use.</summary>
    public required PowerRangeAnswer PowerRange { get; init; }

    /// <summary>The finest detail its aperture shows.</summary>
    public required ResolutionAnswer Resolution { get; init; }

    /// <summary>What it shows through what is owned.</summary>
    public required LadderAnswer Before { get; init; }

    /// <summary>What it shows with each of the choices, in their order.</summary>
    public required IReadOnlyList<LadderOfChoiceAnswer> Choices { get; init; }
}

/// <summary>What one telescope shows with one of the choices.</summary>
internal sealed record LadderOfChoiceAnswer
{
    /// <summary>Of the choice.</summary>
    public required IReadOnlyList<ChoiceCode> Codes { get; init; }

    /// <summary>What the telescope shows.</summary>
    public required LadderAnswer Ladder { get; init; }
}

/// <summary>What was proved, and how long it took.</summary>
internal sealed record ChoicesSolverAnswer
{
    /// <summary>Whether each choice is the best of its way.</summary>
    public required bool Proved { get; init; }

    /// <summary>Which limit ended the work before all was decided: `work` or `memory`; null if none did.</summary>
    public required ReachedLimit? Limit { get; init; }

    /// <summary>How long the solves took that made this answer; an equal request may be given the same answer again.</summary>
    public required double Milliseconds { get; init; }
}
