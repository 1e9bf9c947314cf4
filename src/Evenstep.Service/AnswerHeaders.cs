using Evenstep.Service.Wording;

namespace Evenstep.Service;

/// <summary>What the headers of every answer say.</summary>
internal static class AnswerHeaders
{
    public static void UseAnswerHeaders(this WebApplication app) => app.Use((context, next) =>
    {
        // When the answer starts, for the error pages clear the headers of what they replace.
        context.Response.OnStarting(() =>
        {
            context.Response.Headers.ContentLanguage = English.Language;
            context.Response.Headers.XContentTypeOptions = "nosniff";
            return Task.CompletedTask;
        });
        return next(context);
    });
}
