using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Contract.Problems;

/// <summary>An error answer (RFC 9457).</summary>
internal sealed record ProblemDocument
{
    /// <summary>The kind of error, as a URI reference; listed in this document's description.</summary>
    public required string Type { get; init; }

    /// <summary>The kind of error in words.</summary>
    public required string Title { get; init; }

    /// <summary>The HTTP status.</summary>
    public required int Status { get; init; }

    /// <summary>What happened this time, and what to change.</summary>
    public required string Detail { get; init; }

    /// <summary>What is wrong with the body: from JSON Pointer (RFC 6901) to all that is wrong there.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyDictionary<string, IReadOnlyList<ErrorAnswer>>? Errors { get; init; }

    /// <summary>How many more errors there are than are shown.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? MoreErrors { get; init; }
}

/// <summary>One thing wrong at a place of the body.</summary>
internal sealed record ErrorAnswer
{
    /// <summary>The code of it, the same in every language.</summary>
    public required FaultCode Code { get; init; }

    /// <summary>What was given, what is allowed, and what to change.</summary>
    public required string Message { get; init; }
}
