using System.Text.Json;

namespace Evenstep.Service.Tests.Answers;

/// <summary>What a client reads of catalogues.</summary>
internal sealed record CatalogueList(IReadOnlyList<ListedCatalogue> Catalogues, string? NextCursor);

internal sealed record ListedCatalogue(string Id, string Version, string Currency, int ItemCount, int TelescopeCount);

internal sealed record StoredSummary(
    string Id, string Version, string Currency, int ItemCount, int TelescopeCount, IReadOnlyList<ImportWarning> Warnings, int MoreWarnings);

internal sealed record ImportWarning(string Pointer, string Code, string Text, JsonElement Values);

/// <summary>What a client reads of a line of a batch.</summary>
internal sealed record LineAnswer(string? Id, int? Line = null, Recommendation? Recommendation = null, ProblemDetails? Problem = null);
