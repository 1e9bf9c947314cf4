using System.Text.Json.Serialization;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Problems;

namespace Evenstep.Service.Features.Batches;

/// <summary>A line of the answer to a batch: it holds either `recommendation` or `problem`.</summary>
internal sealed record BatchAnswer
{
    /// <summary>What the caller calls the request; null if the line does not tell.</summary>
    public required string? Id { get; init; }

    /// <summary>The number of the line, from 1, where `id` is null.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Line { get; init; }

    /// <summary>What the same request alone would be answered, to the byte.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public RecommendationAnswer? Recommendation { get; init; }

    /// <summary>What is wrong with the line.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ProblemDocument? Problem { get; init; }
}
