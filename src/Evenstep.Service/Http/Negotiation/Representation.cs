using System.Buffers;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Http.Negotiation;

/// <summary>How a caller wants to be answered.</summary>
/// <param name="Form">As JSON or as a picture.</param>
/// <param name="Language">What its words are in.</param>
internal sealed record Representation(AnswerFormat Form, Language Language);

/// <summary>Gives an answer in the representation asked for.</summary>
internal static class RepresentationOfAnswers
{
    /// <param name="response">To be written.</param>
    /// <param name="representation">What is said of the body.</param>
    /// <param name="body">What is sent.</param>
    /// <param name="contentSecurityPolicy">What may be done with it, if that is to be said.</param>
    /// <param name="cancellationToken">Nobody waits any more.</param>
    public static async Task GiveAsync(
        this HttpResponse response, Representation representation, ReadOnlySequence<byte> body, string? contentSecurityPolicy,
        CancellationToken cancellationToken)
    {
        response.SayLanguage(representation.Language);
        response.ContentType = representation.Form.ContentType;
        response.ContentLength = body.Length;
        if (contentSecurityPolicy is not null)
        {
            response.Headers.ContentSecurityPolicy = contentSecurityPolicy;
        }

        using var counted = response.HttpContext.RequestServices.GetRequiredService<AnswersBeingSent>().Count(body.Length);
        foreach (var piece in body)
        {
            // Each goes out before the next one: the server would copy all that is written at once.
            await response.Body.WriteAsync(piece, cancellationToken);
        }
    }
}
