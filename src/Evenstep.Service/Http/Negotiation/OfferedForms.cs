using System.Collections.Immutable;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Negotiation;

/// <summary>The forms that an endpoint offers, the usual one first.</summary>
internal sealed class OfferedForms
{
    public static readonly OfferedForms JsonOnly = new(AnswerForm.Json);
    public static readonly OfferedForms JsonOrCsv = new(AnswerForm.Json, AnswerForm.Csv);
    public static readonly OfferedForms JsonOrPicture = new(AnswerForm.Json, AnswerForm.Picture);
    public static readonly OfferedForms LinesOnly = new(AnswerForm.Lines);

    /// <summary>An answer without a body, which is acceptable to everybody.</summary>
    public static readonly OfferedForms Nothing = new();

    private const double UsualQuality = 1;

    /// <summary>What the endpoint of a request offers: JSON only, unless its metadata say otherwise.</summary>
    public static OfferedForms Of(HttpContext context) => context.GetEndpoint()?.Metadata.GetMetadata<OfferedForms>() ?? JsonOnly;

    /// <summary>The same by the metadata of an endpoint.</summary>
    public static OfferedForms Of(IReadOnlyList<object> metadata) => metadata.OfType<OfferedForms>().LastOrDefault() ?? JsonOnly;

    /// <summary>The form that the answer to a request takes, which has been found acceptable.</summary>
    public static AnswerForm FormFor(HttpRequest request) => Of(request.HttpContext).Choose(request.Headers.Accept)!;

    private OfferedForms(params ReadOnlySpan<AnswerForm> forms) => Forms = [.. forms];

    public ImmutableArray<AnswerForm> Forms { get; }

    /// <summary>
    /// The form that a caller would rather have, by `Accept` (RFC 9110); of two equally welcome, the one named more
    /// precisely, then the usual one. Null if none is acceptable.
    /// </summary>
    public AnswerForm? Choose(StringValues accept)
    {
        if (accept.Count == 0 || !MediaTypeHeaderValue.TryParseList(accept, out var ranges))
        {
            return Forms[0];
        }

        return Forms
            .Select(form => (Form: form, Range: form.DecidingAmong(ranges)))
            .Where(one => one.Range is not null && QualityOf(one.Range) > 0)
            .OrderByDescending(one => QualityOf(one.Range!))
            .ThenByDescending(one => AnswerForm.Precision(one.Range!))
            .FirstOrDefault().Form;
    }

    /// <summary>The refusal of a caller who accepts none of them.</summary>
    public string RefusalOf(StringValues accept) =>
        $"`Accept: {accept}` was given; the answer is {string.Join(" or ", Forms.Select(form => form.MediaType))}. Accept that, or leave the header out.";

    private static double QualityOf(MediaTypeHeaderValue range) => range.Quality ?? UsualQuality;
}
