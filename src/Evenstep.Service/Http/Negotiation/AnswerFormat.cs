using System.Collections.Immutable;
using System.Net.Mime;
using Evenstep.Service.Contract.Headers;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Negotiation;

/// <summary>A form that an answer can take.</summary>
internal sealed class AnswerFormat
{
    public static readonly AnswerFormat Json = new(MediaTypeNames.Application.Json);
    public static readonly AnswerFormat Csv = new(MediaTypeNames.Text.Csv);
    public static readonly AnswerFormat Picture = new(MediaTypeNames.Image.Svg) { Headers = [AnswerHeader.ContentSecurityPolicy] };
    public static readonly AnswerFormat Lines = new("application/x-ndjson");

    private readonly MediaTypeHeaderValue whole;

    private AnswerFormat(string mediaType)
    {
        MediaType = mediaType;
        whole = new MediaTypeHeaderValue(mediaType) { Charset = "utf-8" };
        ContentType = whole.ToString();
    }

    public string MediaType { get; }

    /// <summary>Which headers an answer has for its form's sake.</summary>
    public ImmutableArray<AnswerHeader> Headers { get; private init; } = [];

    /// <summary>The media type with its character set.</summary>
    public string ContentType { get; }

    /// <summary>The range that decides how welcome this form is: the most precise, so that `application/json;q=0, */*` accepts no JSON.</summary>
    public MediaTypeHeaderValue? DecidingAmong(IEnumerable<MediaTypeHeaderValue> ranges) => ranges.Where(whole.IsSubsetOf).MaxBy(Precision);

    public static int Precision(MediaTypeHeaderValue range) => range.MatchesAllTypes ? 0 : range.MatchesAllSubTypes ? 1 : 2;
}
