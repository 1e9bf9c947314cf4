using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>What one item does in one telescope beside what is owned.</summary>
internal sealed record MatchAnswer
{
    /// <summary>The catalogue; its version is null, for the answer's own ETag stands for it.</summary>
    public required CatalogueAnswer Catalogue { get; init; }

    /// <summary>The currency of all money, by ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>The item.</summary>
    public required MatchedItemAnswer Item { get; init; }

    /// <summary>The telescope.</summary>
    public required MatchedTelescopeAnswer Telescope { get; init; }

    /// <summary>What the item comes to.</summary>
    public required RemarkAnswer Verdict { get; init; }

    /// <summary>Every view that needs the item, alone and through each Barlow owned, by power; for a Barlow, of each eyepiece owned.</summary>
    public required IReadOnlyList<ViewAnswer> Views { get; init; }

    /// <summary>The pairs of such a view and one that is there already that repeat one another, lower power first.</summary>
    public required IReadOnlyList<OverlapAnswer> Repeats { get; init; }

    /// <summary>The step of what is owned that the item fills; null if it fills none.</summary>
    public required StepAnswer? Fills { get; init; }

    /// <summary>The figures of what is owned.</summary>
    public required FiguresAnswer Before { get; init; }

    /// <summary>The figures with the item.</summary>
    public required FiguresAnswer After { get; init; }

    /// <summary>What else is worth knowing.</summary>
    public required IReadOnlyList<RemarkAnswer> Notes { get; init; }

    /// <summary>Warnings; that of the Sun is always there.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }
}

/// <summary>An item of the catalogue.</summary>
internal sealed record MatchedItemAnswer
{
    /// <summary>Its id in the catalogue.</summary>
    public required string ItemId { get; init; }

    /// <summary>Its name in the catalogue.</summary>
    public required string? Name { get; init; }

    /// <summary>What it is.</summary>
    public required ItemKind Kind { get; init; }

    /// <summary>Its price.</summary>
    public required decimal Price { get; init; }

    /// <summary>Whether it can be bought now.</summary>
    public required bool InStock { get; init; }
}

/// <summary>A telescope and what it can use.</summary>
internal sealed record MatchedTelescopeAnswer
{
    /// <summary>As the catalogue names it, or made up.</summary>
    public required string Name { get; init; }

    /// <summary>The powers it can use.</summary>
    public required PowerRangeAnswer PowerRange { get; init; }

    /// <summary>The finest detail its aperture shows.</summary>
    public required ResolutionAnswer Resolution { get; init; }
}
