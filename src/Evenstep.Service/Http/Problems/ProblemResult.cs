using System.Globalization;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Logging;
using Serilog;

namespace Evenstep.Service.Http.Problems;

/// <summary>Answers with an error.</summary>
internal sealed class ProblemResult(ProblemKind kind, string detail) : IResult, IStatusCodeHttpResult
{
    public const string ContentType = "application/problem+json";

    private const int LongestPlaceShown = 300;

    private static readonly TimeSpan UsualWait = TimeSpan.FromSeconds(1);

    public ProblemKind Kind { get; } = kind;

    public string Detail { get; } = detail;

    public Faults? Faults { get; init; }

    public TimeSpan? RetryAfter { get; init; }

    public int? StatusCode => Kind.Status;

    /// <summary>Whether the same request may be answered otherwise a little later: then it must be said when.</summary>
    private bool IsForNow => Kind.Headers.Contains(AnswerHeader.RetryAfter);

    /// <summary>A refused body, or another part of a request. If all that is wrong is that something does not exist, it is not found.</summary>
    public static ProblemResult Of(Faults faults, string part = "body")
    {
        var notFound = faults.More == 0 && faults.Shown.All(fault => fault.Code is FaultCode.UnknownCatalogue or FaultCode.UnknownTelescope && fault.Pointer.EndsWith("/id", StringComparison.Ordinal));
        var many = faults.Shown.Count + faults.More;
        var detail = many == 1
            ? $"At {PlaceOf(faults.Shown[0], part)}: {faults.Shown[0].Message}"
            : string.Create(CultureInfo.InvariantCulture, $"{many} things in the {part} are wrong; `errors` names {(faults.More > 0 ? $"the first {faults.Shown.Count}" : "each")} by its place, with what to change.");
        return new ProblemResult(notFound ? ProblemKind.NotFound : ProblemKind.InvalidRequest, detail) { Faults = faults };
    }

    private static string PlaceOf(Fault fault, string part) => fault.Pointer.Length switch
    {
        0 => $"the top of the {part}",
        > LongestPlaceShown => "the place that `errors` names",
        _ => fault.Pointer,
    };

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = Kind.Status;
        if ((RetryAfter ?? (IsForNow ? UsualWait : null)) is { } wait)
        {
            response.Headers.RetryAfter = Math.Max(1, Math.Ceiling(wait.TotalSeconds)).ToString("0", CultureInfo.InvariantCulture);
        }

        httpContext.RequestServices.GetRequiredService<IDiagnosticContext>().Set(RequestLog.Outcome, Kind.Name);
        return response.WriteAsJsonAsync(Document(), ProblemJson.In(Language.English).ProblemDocument, ContentType, httpContext.RequestAborted);
    }

    public ProblemDocument Document() => new()
    {
        Type = Kind.Type,
        Title = Kind.Title,
        Status = Kind.Status,
        Detail = Detail,
        Errors = Faults?.Shown.GroupBy(fault => fault.Pointer, StringComparer.Ordinal).ToDictionary(
            group => group.Key,
            group => (IReadOnlyList<ErrorAnswer>)[.. group.Select(fault => new ErrorAnswer { Code = fault.Code, Message = fault.Message })],
            StringComparer.Ordinal),
        MoreErrors = Faults is { More: > 0 } ? Faults.More : null,
    };
}
