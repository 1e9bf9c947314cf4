using System.Buffers;
using Evenstep.Service.Pictures;
using Evenstep.Service.Scheduling;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Door;

/// <summary>How a caller wants to be answered.</summary>
/// <param name="Form">As JSON or as a picture.</param>
/// <param name="Language">What its words are in.</param>
internal sealed record Manner(AnswerForm Form, Language Language);

/// <summary>Gives an answer in the manner asked for.</summary>
internal static class MannerOfAnswers
{
    public static async Task GiveAsync(this HttpResponse response, Manner manner, ReadOnlySequence<byte> body, CancellationToken gone)
    {
        response.SayLanguage(manner.Language);
        response.ContentType = manner.Form.ContentType;
        response.ContentLength = body.Length;
        if (manner.Form == AnswerForm.Picture)
        {
            response.Headers.ContentSecurityPolicy = PictureStyle.Policy;
        }

        using var counted = response.HttpContext.RequestServices.GetRequiredService<AnswersBeingSent>().Count(body.Length);
        foreach (var piece in body)
        {
            // Each goes out before the next one: the server would copy all that is written at once.
            await response.Body.WriteAsync(piece, gone);
        }
    }
}
