using System.Globalization;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Logging;
using Evenstep.Service.Http.Negotiation;
using Serilog;

namespace Evenstep.Service.Http.Problems;

/// <summary>Answers with an error.</summary>
internal sealed class ProblemResult(ProblemKind kind, ErrorMessage detail) : IResult, IStatusCodeHttpResult
{
    public const string ContentType = "application/problem+json";

    private const int LongestPlaceShown = 300;

    private static readonly TimeSpan UsualWait = TimeSpan.FromSeconds(1);

    public ProblemKind Kind { get; } = kind;

    public ErrorMessage Detail { get; } = detail;

    public Faults? Faults { get; init; }

    public TimeSpan? RetryAfter { get; init; }

    public int? StatusCode => Kind.Status;

    /// <summary>Whether the same request may be answered otherwise a little later: then it must be said when.</summary>
    private bool IsForNow => Kind.Headers.Contains(AnswerHeader.RetryAfter);

    /// <summary>A refused body, or another part of a request. If all that is wrong is that something does not exist, it is not found.</summary>
    public static ProblemResult Of(Faults faults, string part = "body")
    {
        var notFound = faults.More == 0
            && faults.Shown.All(
                fault => fault.Code is FaultCode.UnknownCatalogue or FaultCode.UnknownTelescope && fault.Pointer.EndsWith("/id", StringComparison.Ordinal));
        var many = faults.Shown.Count + faults.More;
        var detail = many == 1
            ? ErrorMessage.Of("error/one", ("place", PlaceOf(faults.Shown[0], part)), ("message", faults.Shown[0].Message))
            : faults.More > 0 ? ErrorMessage.Of("error/many/first", ("many", many), ("part", PartOf(part)), ("shown", faults.Shown.Count))
            : ErrorMessage.Of("error/many", ("many", many), ("part", PartOf(part)));
        return new ProblemResult(notFound ? ProblemKind.NotFound : ProblemKind.InvalidRequest, detail) { Faults = faults };
    }

    private static ErrorMessage PartOf(string part) => ErrorMessage.Of($"error/part/{part}");

    private static ErrorMessage PlaceOf(Fault fault, string part) => fault.Pointer.Length switch
    {
        0 => ErrorMessage.Of("error/place/top", ("part", PartOf(part))),
        > LongestPlaceShown => ErrorMessage.Of("error/place/in-errors"),
        _ => ErrorMessage.Of("error/place", ("pointer", fault.Pointer)),
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
        var language = LanguageFor(httpContext.Request);
        response.SayLanguage(language);
        return response.WriteAsJsonAsync(Document(language), ProblemJson.In(language).ProblemDocument, ContentType, httpContext.RequestAborted);
    }

    /// <summary>The language that a caller asks for; English where not all that is to be said can be said in that.</summary>
    public Language LanguageFor(HttpRequest request) => LanguageFor(request.LanguageAsked());

    /// <summary>A language; English where not all that is to be said can be said in it.</summary>
    public Language LanguageFor(Language asked) =>
        Detail.IsIn(asked) && Faults?.Shown.All(fault => fault.Message.IsIn(asked)) != false ? asked : Language.English;

    /// <summary>What is said in a language, which must be one of <see cref="LanguageFor(Language)"/>.</summary>
    public ProblemDocument Document(Language language) => new()
    {
        Type = Kind.Type,
        Title = Kind.Title.In(language),
        Status = Kind.Status,
        Detail = Detail.In(language),
        Errors = Faults?.Shown.GroupBy(fault => fault.Pointer, StringComparer.Ordinal).ToDictionary(
            group => group.Key,
            group => (IReadOnlyList<ErrorAnswer>)[.. group.Select(fault => new ErrorAnswer { Code = fault.Code, Message = fault.Message.In(language) })],
            StringComparer.Ordinal),
        MoreErrors = Faults is { More: > 0 } ? Faults.More : null,
    };
}
