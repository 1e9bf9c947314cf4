using System.Collections.Immutable;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Headers;

namespace Evenstep.Service.Contract.Problems;

/// <summary>A kind of error answer: a stable URI reference with the words that never change (RFC 9457).</summary>
internal sealed record ProblemKind(string Name, int Status, params ImmutableArray<AnswerHeader> Headers)
{
    public static readonly ProblemKind InvalidJson = new("invalid-json", StatusCodes.Status400BadRequest);
    public static readonly ProblemKind InvalidRequest = new("invalid-request", StatusCodes.Status400BadRequest);
    public static readonly ProblemKind Unauthorized = new("unauthorized", StatusCodes.Status401Unauthorized, AnswerHeader.WwwAuthenticate);
    public static readonly ProblemKind Forbidden = new("forbidden", StatusCodes.Status403Forbidden, AnswerHeader.WwwAuthenticate);
    public static readonly ProblemKind NotFound = new("not-found", StatusCodes.Status404NotFound);
    public static readonly ProblemKind MethodNotAllowed = new("method-not-allowed", StatusCodes.Status405MethodNotAllowed);
    public static readonly ProblemKind NotAcceptable = new("not-acceptable", StatusCodes.Status406NotAcceptable);
    public static readonly ProblemKind ReadOnly = new("read-only", StatusCodes.Status409Conflict);
    public static readonly ProblemKind PreconditionFailed = new("precondition-failed", StatusCodes.Status412PreconditionFailed);
    public static readonly ProblemKind Timeout = new("request-timeout", StatusCodes.Status408RequestTimeout);
    public static readonly ProblemKind TooLarge = new("too-large", StatusCodes.Status413PayloadTooLarge);
    public static readonly ProblemKind UnsupportedMediaType =
        new("unsupported-media-type", StatusCodes.Status415UnsupportedMediaType, AnswerHeader.AcceptEncoding);
    public static readonly ProblemKind AddressTooLong = new("address-too-long", StatusCodes.Status414UriTooLong);
    public static readonly ProblemKind HeadersTooLarge = new("headers-too-large", StatusCodes.Status431RequestHeaderFieldsTooLarge);
    public static readonly ProblemKind RateUsedUp = new("rate-used-up", StatusCodes.Status429TooManyRequests, AnswerHeader.RetryAfter);
    public static readonly ProblemKind ShareUsedUp = new("share-used-up", StatusCodes.Status429TooManyRequests, AnswerHeader.RetryAfter);
    public static readonly ProblemKind InternalError = new("internal-error", StatusCodes.Status500InternalServerError);
    public static readonly ProblemKind WorkLimit = new("work-limit", StatusCodes.Status503ServiceUnavailable, AnswerHeader.RetryAfter);
    public static readonly ProblemKind Saturated = new("saturated", StatusCodes.Status503ServiceUnavailable, AnswerHeader.RetryAfter);
    public static readonly ProblemKind NotReady = new("not-ready", StatusCodes.Status503ServiceUnavailable, AnswerHeader.RetryAfter);
    public static readonly ProblemKind StorageBroken = new("storage-broken", StatusCodes.Status500InternalServerError);
    public static readonly ProblemKind StorageAway = new("storage-away", StatusCodes.Status503ServiceUnavailable, AnswerHeader.RetryAfter);
    public static readonly ProblemKind StorageFull = new("storage-full", StatusCodes.Status507InsufficientStorage);

    public static readonly ImmutableArray<ProblemKind> All =
    [
        InvalidJson, InvalidRequest, Unauthorized, Forbidden, NotFound, MethodNotAllowed, NotAcceptable, Timeout, ReadOnly, PreconditionFailed, TooLarge,
        AddressTooLong, UnsupportedMediaType, RateUsedUp, ShareUsedUp, HeadersTooLarge, InternalError, StorageBroken, WorkLimit, Saturated, NotReady,
        StorageAway, StorageFull,
    ];

    /// <summary>The kind of error in words.</summary>
    public ErrorMessage Title => ErrorMessage.Of($"problem/{Name}");

    public string Type => $"/problems/{Name}";

    /// <summary>The kind that fits a bare status, such as the framework gives.</summary>
    public static ProblemKind OfStatus(int status) =>
        status == InvalidRequest.Status ? InvalidRequest : All.FirstOrDefault(kind => kind.Status == status) ?? status switch
    {
        StatusCodes.Status505HttpVersionNotsupported => InvalidRequest with { Status = status },
        >= 500 => InternalError with { Status = status },
        _ => InvalidRequest with { Status = status },
    };
}
