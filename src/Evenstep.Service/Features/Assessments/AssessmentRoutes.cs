using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Headers;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.Assessments;

/// <summary>What a kit does.</summary>
internal static class AssessmentRoutes
{
    public static void MapAssessments(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/assessments", AssessAsync)
            .WithName("assess")
            .WithTags("Assessments")
            .RequireCors(PageOrigins.Policy)
            .WithMetadata(new TakesBody(FieldTable<AssessmentRequest>.Whole, "assessment"), OfferedFormats.JsonOrPicture)
            .Refuses(ProblemKind.NotFound, ProblemKind.StorageAway);

    /// <summary>Assesses a kit: its views, its steps, and what it repeats. Nothing is bought.</summary>
    /// <remarks>
    /// The same request as for a recommendation without `limits`. A catalogue is only needed to name its telescopes and
    /// items by id. `Accept: image/svg+xml` asks for a picture of the powers. An example that runs as it stands is chosen above the body.
    /// </remarks>
    /// <response code="200">The assessment.</response>
    public static async Task<Results<SpokenResult<AssessmentAnswer>, PictureResult, ProblemResult>> AssessAsync(
        HttpRequest request, CatalogueSnapshot snapshot, WritingGate answers, CancellationToken cancellationToken)
    {
        var received = await BodyReader.ReceiveAsync(request, cancellationToken);
        using var body = received.Open();
        if (body.Refusal is { } refusal)
        {
            return refusal;
        }

        var faults = new Faults();
        if (AssessmentReader.Read(body.Json, snapshot, faults) is not { } asked)
        {
            return ProblemResult.Of(faults);
        }

        return received.Form == AnswerFormat.Picture
            ? new PictureResult(await answers.WriteAsync(_ => AssessmentScene.Of(asked), cancellationToken))
            : new SpokenResult<AssessmentAnswer>(
                await answers.WriteAsync(budget => AssessmentWriter.Write(asked, budget), cancellationToken),
                language => AssessmentJson.In(language).AssessmentAnswer);
    }
}
