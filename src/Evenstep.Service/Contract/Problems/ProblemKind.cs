using System.Collections.Immutable;
using Evenstep.Service.Contract.Headers;

namespace Evenstep.Service.Contract.Problems;

/// <summary>A kind of error answer: a stable URI reference with the words that never change (RFC 9457).</summary>
internal sealed record ProblemKind(string Name, int Status, string Title, params ImmutableArray<AnswerHeader> Headers)
{
    public static readonly ProblemKind InvalidJson = new("invalid-json", StatusCodes.Status400BadRequest, "The body is not JSON");
    public static readonly ProblemKind InvalidRequest = new("invalid-request", StatusCodes.Status400BadRequest, "The request cannot be understood");
    public static readonly ProblemKind Unauthorized = new("unauthorized", StatusCodes.Status401Unauthorized, "A key is needed", AnswerHeader.WwwAuthenticate);
    public static readonly ProblemKind Forbidden = new("forbidden", StatusCodes.Status403Forbidden, "This is not allowed to whoever asks", AnswerHeader.WwwAuthenticate);
    public static readonly ProblemKind NotFound = new("not-found", StatusCodes.Status404NotFound, "There is no such thing");
    public static readonly ProblemKind MethodNotAllowed = new("method-not-allowed", StatusCodes.Status405MethodNotAllowed, "This method is not allowed here");
    public static readonly ProblemKind NotAcceptable = new("not-acceptable", StatusCodes.Status406NotAcceptable, "No answer that is acceptable");
    public static readonly ProblemKind ReadOnly = new("read-only", StatusCodes.Status409Conflict, "This cannot be changed");
    public static readonly ProblemKind PreconditionFailed = new("precondition-failed", StatusCodes.Status412PreconditionFailed, "It is not as the request expects");
    public static readonly ProblemKind Timeout = new("request-timeout", StatusCodes.Status408RequestTimeout, "The request did not come in time");
    public static readonly ProblemKind TooLarge = new("too-large", StatusCodes.Status413PayloadTooLarge, "The body is too large");
    public static readonly ProblemKind UnsupportedMediaType = new("unsupported-media-type", StatusCodes.Status415UnsupportedMediaType, "The body is of a type that is not taken", AnswerHeader.AcceptEncoding);
    public static readonly ProblemKind AddressTooLong = new("address-too-long", StatusCodes.Status414UriTooLong, "The address is too long");
    public static readonly ProblemKind HeadersTooLarge = new("headers-too-large", StatusCodes.Status431RequestHeaderFieldsTooLarge, "The headers are too large");
    public static readonly ProblemKind RateUsedUp = new("rate-used-up", StatusCodes.Status429TooManyRequests, "The key's rate is used up", AnswerHeader.RetryAfter);
    public static readonly ProblemKind ShareUsedUp = new("share-used-up", StatusCodes.Status429TooManyRequests, "The caller has too much under way", AnswerHeader.RetryAfter);
    public static readonly ProblemKind InternalError = new("internal-error", StatusCodes.Status500InternalServerError, "The service failed");
    public static readonly ProblemKind WorkLimit = new("work-limit", StatusCodes.Status503ServiceUnavailable, "The work limit ended before an answer was found", AnswerHeader.RetryAfter);
    public static readonly ProblemKind Saturated = new("saturated", StatusCodes.Status503ServiceUnavailable, "There is too much to do", AnswerHeader.RetryAfter);
    public static readonly ProblemKind NotReady = new("not-ready", StatusCodes.Status503ServiceUnavailable, "The service is not ready", AnswerHeader.RetryAfter);
    public static readonly ProblemKind StorageBroken = new("storage-broken", StatusCodes.Status500InternalServerError, "What is stored cannot be read");
    public static readonly ProblemKind StorageAway = new("storage-away", StatusCodes.Status503ServiceUnavailable, "The storage cannot be reached", AnswerHeader.RetryAfter);
    public static readonly ProblemKind StorageFull = new("storage-full", StatusCodes.Status507InsufficientStorage, "There is no room left");

    public static readonly ImmutableArray<ProblemKind> All =
    [
        InvalidJson, InvalidRequest, Unauthorized, Forbidden, NotFound, MethodNotAllowed, NotAcceptable, Timeout, ReadOnly, PreconditionFailed, TooLarge, AddressTooLong,
        UnsupportedMediaType, RateUsedUp, ShareUsedUp, HeadersTooLarge, InternalError, StorageBroken, WorkLimit, Saturated, NotReady, StorageAway, StorageFull,
    ];

    public string Type => $"/problems/{Name}";

    /// <summary>The kind that fits a bare status, such as the framework gives.</summary>
    public static ProblemKind OfStatus(int status) => status == InvalidRequest.Status ? InvalidRequest : All.FirstOrDefault(kind => kind.Status == status) ?? status switch
    {
        StatusCodes.Status505HttpVersionNotsupported => InvalidRequest with { Status = status },
        >= 500 => InternalError with { Status = status },
        _ => InvalidRequest with { Status = status },
    };
}
