using System.Text.Json;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.Batches;

/// <summary>A line of a batch as its JSON says it; null for what is missing or faulty.</summary>
internal sealed record BatchLineRequest
{
    public required string? Id { get; init; }

    public required RecommendationRequest Planning { get; init; }
}

/// <summary>The table of fields of a line of a batch.</summary>
internal static class BatchFields
{
    private const int MostIdCharacters = 100;

    private static readonly TextShape IdShape = Make.OneLine(MostIdCharacters);

    private static readonly Field<string?> Id = Make.Of("id", IdShape, "What the caller calls this request; it comes back with the answer.");

    public static readonly ObjectShape<BatchLineRequest> Line = new(
        "BatchLine",
        "A request for a recommendation, and what the caller calls it.",
        [Id.Required(), .. RecommendationFields.OfPlanning],
        values => new BatchLineRequest { Id = values.Of(Id), Planning = RecommendationFields.Build(values) });

    /// <summary>The id that a reader of JSON has come to; null for one that is not allowed.</summary>
    public static string? IdOf(ref Utf8JsonReader reader) =>
        reader.TokenType == JsonTokenType.String && reader.GetString() is { } id && IdShape.FaultOf(id) is null ? id : null;
}
