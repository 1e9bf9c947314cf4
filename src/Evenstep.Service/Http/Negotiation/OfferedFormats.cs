using System.Collections.Immutable;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Negotiation;

/// <summary>The forms that an endpoint offers, the usual one first.</summary>
internal sealed class OfferedFormats
{
    public static readonly OfferedFormats JsonOnly = new(AnswerFormat.Json);
    public static readonly OfferedFormats JsonOrCsv = new(AnswerFormat.Json, AnswerFormat.Csv);
    public static readonly OfferedFormats JsonOrPicture = new(AnswerFormat.Json, AnswerFormat.Picture);
    public static readonly OfferedFormats LinesOnly = new(AnswerFormat.Lines);

    /// <summary>An answer without a body, which is acceptable to everybody.</summary>
    public static readonly OfferedFormats Nothing = new();

    private const double UsualQuality = 1;

    /// <summary>What the endpoint of a request offers: JSON only, unless its metadata say otherwise.</summary>
    public static OfferedFormats Of(HttpContext context) => context.GetEndpoint()?.Metadata.GetMetadata<OfferedFormats>() ?? JsonOnly;

    /// <summary>The same by the metadata of an endpoint.</summary>
    public static OfferedFormats Of(IReadOnlyList<object> metadata) => metadata.OfType<OfferedFormats>().LastOrDefault() ?? JsonOnly;

    /// <summary>The form that the answer to a request takes, which has been found acceptable.</summary>
    public static AnswerFormat FormFor(HttpRequest request) => Of(request.HttpContext).Choose(request.Headers.Accept)!;

    private OfferedFormats(params ReadOnlySpan<AnswerFormat> forms) => Forms = [.. forms];

    public ImmutableArray<AnswerFormat> Forms { get; }

    /// <summary>
    /// The form that a caller would rather have, by `Accept` (RFC 9110); of two equally welcome, the one named more
    /// precisely, then the usual one. Null if none is acceptable.
    /// </summary>
    public AnswerFormat? Choose(StringValues accept)
    {
        if (accept.Count == 0 || !MediaTypeHeaderValue.TryParseList(accept, out var ranges))
        {
            return Forms[0];
        }

        return Forms
            .Select(form => (Form: form, Range: form.DecidingAmong(ranges)))
            .Where(one => one.Range is not null && QualityOf(one.Range) > 0)
            .OrderByDescending(one => QualityOf(one.Range!))
            .ThenByDescending(one => AnswerFormat.Precision(one.Range!))
            .FirstOrDefault().Form;
    }

    /// <summary>The refusal of a caller who accepts none of them.</summary>
    public string RefusalOf(StringValues accept) =>
        $"`Accept: {accept}` was given; the answer is {string.Join(" or ", Forms.Select(form => form.MediaType))}. Accept that, or leave the header out.";

    private static double QualityOf(MediaTypeHeaderValue range) => range.Quality ?? UsualQuality;
}
