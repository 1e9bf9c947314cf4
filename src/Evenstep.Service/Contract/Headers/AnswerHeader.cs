using System.Collections.Immutable;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Contract.Headers;

/// <summary>A header that answers have, for the OpenAPI document. Tests hold every answer against it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Meaning">What it says.</param>
internal sealed record AnswerHeader(string Name, string Meaning)
{
    public static readonly AnswerHeader AcceptEncoding = new(HeaderNames.AcceptEncoding, "That the body is to come as it is, if it came packed.");
    public static readonly AnswerHeader AcceptPatch = new("Accept-Patch", "The media types that are taken (RFC 5789).");
    public static readonly AnswerHeader CacheControl =
        new(HeaderNames.CacheControl, "Who may keep the answer, and for how long (RFC 9111, RFC 5861); nobody an error.");
    public static readonly AnswerHeader ContentLanguage =
        new(HeaderNames.ContentLanguage, "The language of the words in the answer; an error may be in English where another was asked for.");
    public static readonly AnswerHeader ContentSecurityPolicy = new(HeaderNames.ContentSecurityPolicy, "Of a picture: it may load and run nothing.");
    public static readonly AnswerHeader ETag = new(
        HeaderNames.ETag, "The entity tag: of a catalogue its version in this form, of a product page this very answer. For `If-Match` and `If-None-Match`.");
    public static readonly AnswerHeader Location = new(HeaderNames.Location, "Where it is stored.");
    public static readonly AnswerHeader NoSniff = new(HeaderNames.XContentTypeOptions, "`nosniff`: the type is what `Content-Type` says.");
    public static readonly AnswerHeader RateLimit =
        new("RateLimit", "With a key that has a rate: what is left of it, and in how many seconds it is whole again.");
    public static readonly AnswerHeader RateLimitPolicy = new("RateLimit-Policy", "With a key that has a rate: how many requests in how many seconds.");
    public static readonly AnswerHeader RetryAfter = new(HeaderNames.RetryAfter, "In how many seconds to send the request again.") { IsSeconds = true };
    public static readonly AnswerHeader Vary = new(HeaderNames.Vary, "Which headers of the request the answer depends on.");
    public static readonly AnswerHeader WwwAuthenticate =
        new(HeaderNames.WWWAuthenticate, "Where there are keys: that one is to be sent, or what the one sent lacks (RFC 6750).");

    /// <summary>Of whatever answer.</summary>
    public static readonly ImmutableArray<AnswerHeader> OfAll = [ContentLanguage, NoSniff];

    /// <summary>Of whatever error.</summary>
    public static readonly ImmutableArray<AnswerHeader> OfErrors = [CacheControl, Vary];

    /// <summary>Of whatever answer once a key has been accepted, or none is needed.</summary>
    public static readonly ImmutableArray<AnswerHeader> OfAdmitted = [RateLimit, RateLimitPolicy];

    /// <summary>Whether it is a number of seconds, and not a text.</summary>
    public bool IsSeconds { get; private init; }
}

/// <summary>Says which headers the answers of an endpoint with a status have, beside those that any has.</summary>
internal sealed record SendsHeaders(int Status, params ImmutableArray<AnswerHeader> Headers);
