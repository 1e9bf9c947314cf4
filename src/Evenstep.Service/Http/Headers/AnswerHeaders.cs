using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Headers;

/// <summary>What the headers of every answer say.</summary>
internal static class AnswerHeaders
{
    public static void UseAnswerHeaders(this WebApplication app) => app.Use((context, next) =>
    {
        // When the answer starts, for the error pages clear the headers of what they replace.
        context.Response.OnStarting(() =>
        {
            SayLanguage(context.Response.Headers);
            SayForms(context);
            SayOrigin(context);
            LetNobodyKeepErrors(context.Response);
            context.Response.Headers.XContentTypeOptions = "nosniff";
            return Task.CompletedTask;
        });
        return next(context);
    });

    /// <summary>Another caller may get the same in another form.</summary>
    private static void SayForms(HttpContext context)
    {
        if (OfferedFormats.Of(context).Forms.Length > 1)
        {
            var headers = context.Response.Headers;
            headers.Vary = string.Join(", ", [HeaderNames.Accept, .. headers.Vary]);
        }
    }

    /// <summary>Pages of some origins are let in by a header of the answer: it must not be kept for them without it.</summary>
    private static void SayOrigin(HttpContext context)
    {
        var headers = context.Response.Headers;
        if (PageOrigins.Admit(context) && !headers.Vary.Any(vary => vary?.Contains(HeaderNames.Origin, StringComparison.OrdinalIgnoreCase) == true))
        {
            headers.AppendCommaSeparatedValues(HeaderNames.Vary, HeaderNames.Origin);
        }
    }

    /// <summary>A cache may keep some errors unasked (RFC 9111, section 4.2.2), such as that there is no such thing; there may be one soon.</summary>
    private static void LetNobodyKeepErrors(HttpResponse response)
    {
        if (response.ContentType == ProblemResult.ContentType)
        {
            response.Headers.CacheControl = "no-store";

            // Of the framework, where an exception is answered; they say no more.
            response.Headers.Remove(HeaderNames.Pragma);
            response.Headers.Remove(HeaderNames.Expires);
        }
    }

    /// <summary>Whatever says nothing of a language itself is in English.</summary>
    private static void SayLanguage(IHeaderDictionary headers)
    {
        if (headers.ContentLanguage.Count == 0)
        {
            headers.ContentLanguage = Language.English.Tag;
        }
    }
}
