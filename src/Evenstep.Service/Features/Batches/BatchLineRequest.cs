using System.Text.Json;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.Batches;

/// <summary>A line of a batch as its JSON says it; null for what is missing or faulty.</summary>
[Schema("BatchLine", "A request for a recommendation, and what the caller calls it.")]
internal sealed record BatchLineRequest
{
    private const int MostIdCharacters = 100;

    private static readonly TextShape IdShape = Make.OneLine(MostIdCharacters);

    [Text("What the caller calls this request; it comes back with the answer.", Most = MostIdCharacters, IsRequired = true)]
    public string? Id { get; init; }

    [FieldsOf<RecommendationRequest>]
    public RecommendationRequest Planning { get; init; } = new();

    /// <summary>The id that a reader of JSON has come to; null for one that is not allowed.</summary>
    public static string? IdOf(ref Utf8JsonReader reader) =>
        reader.TokenType == JsonTokenType.String && reader.GetString() is { } id && IdShape.FaultOf(id) is null ? id : null;
}
