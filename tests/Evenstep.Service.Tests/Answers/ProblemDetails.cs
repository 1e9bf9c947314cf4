namespace Evenstep.Service.Tests.Answers;

/// <summary>What a client reads of an error.</summary>
internal sealed record ProblemDetails(
    string Type, string Title, int Status, string Detail, IReadOnlyDictionary<string, IReadOnlyList<ErrorDetails>>? Errors = null, int? MoreErrors = null)
{
    /// <summary>The codes of the errors, each after its pointer.</summary>
    public string[] Codes() => [.. Errors!.SelectMany(at => at.Value.Select(error => $"{at.Key} {error.Code}"))];
}

internal sealed record ErrorDetails(string Code, string Message);
