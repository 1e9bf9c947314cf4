using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Warnings;

namespace Evenstep.Service.Catalogues;

/// <summary>A stored catalogue without its content.</summary>
internal record CatalogueSummaryAnswer
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>A short hash of its content: the same content has the same version. In quotation marks it is the entity tag.</summary>
    public required string Version { get; init; }

    /// <summary>The currency of its prices, by ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>How many items it has.</summary>
    public required int ItemCount { get; init; }

    /// <summary>How many telescopes it lists.</summary>
    public required int TelescopeCount { get; init; }

    public static CatalogueSummaryAnswer Of(Catalogue catalogue) => new()
    {
        Id = catalogue.Id!,
        Version = catalogue.Version!,
        Currency = catalogue.Currency,
        ItemCount = catalogue.Items.Count,
        TelescopeCount = catalogue.Telescopes.Count,
    };
}

/// <summary>A catalogue that has just been stored.</summary>
internal sealed record StoredCatalogueAnswer : CatalogueSummaryAnswer
{
    /// <summary>Data that can hardly be right; none of it is refused.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>How many more warnings there are than are shown.</summary>
    public required int MoreWarnings { get; init; }

    public static StoredCatalogueAnswer Of(Change change)
    {
        var catalogue = change.Catalogue!;
        return new StoredCatalogueAnswer
        {
            Id = catalogue.Id!,
            Version = catalogue.Version!,
            Currency = catalogue.Currency,
            ItemCount = catalogue.Items.Count,
            TelescopeCount = catalogue.Telescopes.Count,
            Warnings = change.Warnings.Shown,
            MoreWarnings = change.Warnings.More,
        };
    }
}

/// <summary>Some of the stored catalogues.</summary>
internal sealed record CatalogueListAnswer
{
    /// <summary>The catalogues, by id.</summary>
    public required IReadOnlyList<CatalogueSummaryAnswer> Catalogues { get; init; }

    /// <summary>What to give as `cursor` for those that follow; null if none do.</summary>
    public required string? NextCursor { get; init; }
}
