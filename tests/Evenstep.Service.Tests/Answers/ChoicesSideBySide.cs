namespace Evenstep.Service.Tests.Answers;

/// <summary>What a client reads of several ways of weighing the same wishes.</summary>
internal sealed record ChoicesSideBySide(
    string Outcome, CatalogueVersion Catalogue, string Currency, IReadOnlyList<Choice> Choices, Figures Before, IReadOnlyList<ChoicesInTelescope> Telescopes,
    IReadOnlyList<Remark> Notes, Conflicts? Conflicts, IReadOnlyList<Remark> Cautions, PathSolver Solver);

internal sealed record Choice(
    IReadOnlyList<string> Codes, string Outcome, decimal TotalPrice, IReadOnlyList<ChosenItem> Purchases, Figures After, IReadOnlyList<Remark> Differences);

internal sealed record ChosenItem(
    string ItemId, string? Name, string Kind, decimal Price, int Order,
    string? Line, string? Url, string? Sku, string? Gtin, IReadOnlyDictionary<string, string>? Attributes);

internal sealed record ChoicesInTelescope(string Name, PowerRange PowerRange, Resolution Resolution, Ladder Before, IReadOnlyList<LadderOfChoice> Choices);

internal sealed record LadderOfChoice(IReadOnlyList<string> Codes, Ladder Ladder);
