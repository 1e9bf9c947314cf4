using System.Collections.Frozen;
using System.Globalization;
using System.Text.Json;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Answering.Admission;

/// <summary>An error whose body is always the same, and is written only once in each language.</summary>
internal sealed class FixedProblem(ProblemResult problem)
{
    private static readonly TimeSpan Least = TimeSpan.FromSeconds(1);

    private readonly FrozenDictionary<Language, byte[]> bodies = Language.All.ToFrozenDictionary(
        language => language,
        language => JsonSerializer.SerializeToUtf8Bytes(problem.Document(problem.LanguageFor(language)), ProblemJson.In(language).ProblemDocument));

    public Task AnswerAsync(HttpContext context, TimeSpan? retryAfter)
    {
        var wait = retryAfter > Least ? retryAfter.Value : Least;
        var asked = context.Request.LanguageAsked();
        var body = bodies[asked];
        context.Response.StatusCode = problem.Kind.Status;
        context.Response.ContentType = ProblemResult.ContentType;
        context.Response.ContentLength = body.Length;
        context.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString("0", CultureInfo.InvariantCulture);
        // What is said of every answer: nothing further in sees this one.
        context.Response.Headers.CacheControl = "no-store";
        context.Response.SayLanguage(problem.LanguageFor(asked));
        context.Response.Headers.XContentTypeOptions = "nosniff";
        return HttpMethods.IsHead(context.Request.Method) ? Task.CompletedTask : context.Response.Body.WriteAsync(body, context.RequestAborted).AsTask();
    }
}
