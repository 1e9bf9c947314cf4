using Evenstep.Service.Http.Negotiation;
using System.Buffers;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>Answers with a picture, in the language that the caller asks for.</summary>
internal sealed class PictureResult(LadderScene scene) : IResult, IStatusCodeHttpResult
{
    public int? StatusCode => StatusCodes.Status200OK;

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var language = httpContext.Request.LanguageAsked();
        var body = new ReadOnlySequence<byte>(LadderPicture.Draw(scene, language));
        return httpContext.Response.GiveAsync(new Representation(AnswerFormat.Picture, language), body, PictureStyle.Policy, httpContext.RequestAborted);
    }
}
