using Evenstep.Service.Contract.Languages;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Negotiation;

/// <summary>Chooses the language of an answer, and says which was chosen.</summary>
internal static class LanguageChoice
{
    private const double UsualQuality = 1;

    /// <summary>
    /// The language that a caller would rather have, by `Accept-Language` (RFC 9110): English if none is asked for, or none
    /// that is spoken. `de-AT` is served by German.
    /// </summary>
    public static Language LanguageAsked(this HttpRequest request) => Of(request.Headers.AcceptLanguage);

    public static Language Of(StringValues header)
    {
        if (header.Count == 0 || !StringWithQualityHeaderValue.TryParseList(header, out var ranges))
        {
            return Language.All[0];
        }

        var wanted = ranges.Where(range => QualityOf(range) > 0).OrderByDescending(QualityOf);
        return wanted.Select(range => Serving(range, ranges)).OfType<Language>().FirstOrDefault() ?? Language.All[0];
    }

    /// <summary>Says which language an answer is in, and that another caller may get it in another.</summary>
    public static void SayLanguage(this HttpResponse response, Language language)
    {
        response.Headers.ContentLanguage = language.Tag;
        response.Headers.AppendCommaSeparatedValues(HeaderNames.Vary, HeaderNames.AcceptLanguage);
    }

    /// <summary>The language that a range asks for; `*` is any that the caller does not rule out.</summary>
    private static Language? Serving(StringWithQualityHeaderValue range, IList<StringWithQualityHeaderValue> all) => range.Value == "*"
        ? Language.All.FirstOrDefault(language => !all.Any(other => QualityOf(other) == 0 && Matches(other, language)))
        : Language.All.FirstOrDefault(language => Matches(range, language));

    private static bool Matches(StringWithQualityHeaderValue range, Language language) =>
        range.Value.Equals(language.Tag, StringComparison.OrdinalIgnoreCase)
        || range.Value.StartsWith($"{language.Tag}-", StringComparison.OrdinalIgnoreCase);

    private static double QualityOf(StringWithQualityHeaderValue range) => range.Quality ?? UsualQuality;
}
