using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Endpoints;

namespace Evenstep.Service.Catalogues;

/// <summary>What all answers to a GET of a catalogue or of something in it share: an entity tag, and conditions on it.</summary>
internal static class ConditionalRead
{
    /// <summary>Declares the headers of such an answer, its 304, and how it may be refused.</summary>
    public static void Declare(EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status304NotModified));
        builder.Metadata.Add(RequestHeader.IfMatchOfRead);
        builder.Metadata.Add(RequestHeader.IfNoneMatchOfRead);
        builder.Metadata.Add(new SendsHeaders(StatusCodes.Status200OK, AnswerHeader.ETag, AnswerHeader.CacheControl));
        builder.Metadata.Add(new SendsHeaders(StatusCodes.Status304NotModified, AnswerHeader.ETag, AnswerHeader.CacheControl));
        builder.Metadata.Add(new MayRefuse(ProblemKind.NotFound, ProblemKind.PreconditionFailed, ProblemKind.StorageAway));
    }
}
