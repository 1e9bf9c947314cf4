using System.Net.Mime;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Http.Endpoints;

/// <summary>Tells the OpenAPI document what body an endpoint takes, and which of the example files show it.</summary>
/// <param name="Body">The table of fields that reads the body.</param>
/// <param name="Examples">With what the names of its example files begin.</param>
internal sealed record TakesBody(Shape Body, string Examples)
{
    /// <summary>What it is sent as; of lines, the table reads each.</summary>
    public string MediaType { get; init; } = MediaTypeNames.Application.Json;

    /// <summary>Whether it is lines, each JSON of its own.</summary>
    public bool IsLines => MediaType == AnswerFormat.Lines.MediaType;

    /// <summary>An example of the CSV that it takes too; null if it takes none.</summary>
    public string? Csv { get; init; }
}

/// <summary>Tells the OpenAPI document what an endpoint answers, where that is what another takes.</summary>
/// <param name="Body">The table of fields that reads such a body.</param>
/// <param name="Examples">With what the names of its example files begin.</param>
internal sealed record GivesBody(Shape Body, string Examples)
{
    /// <summary>An example of the CSV that it gives too; null if it gives none.</summary>
    public string? Csv { get; init; }
}
