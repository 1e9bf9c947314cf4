using Evenstep.Service.Catalogues;
using Evenstep.Service.Documents;
using Evenstep.Service.Door;
using Evenstep.Service.Errors;
using Evenstep.Service.Pictures;
using Evenstep.Service.ProductPages;
using Evenstep.Service.Reading;
using Evenstep.Service.Recommendations;
using Evenstep.Service.Wording;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Assessments;

/// <summary>What a kit does.</summary>
internal static class AssessmentRoutes
{
    public static void MapAssessments(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/assessments", AssessAsync)
            .WithName("assess")
            .WithTags("Assessments")
            .RequireCors(PageOrigins.Policy)
            .WithMetadata(new TakesBody(AssessmentFields.Body, "assessment"), OfferedForms.JsonOrPicture)
            .Refuses(ProblemKind.NotFound, ProblemKind.StorageAway);

    /// <summary>Assesses a kit: its views, its steps, and what it repeats. Nothing is bought.</summary>
    /// <remarks>
    /// The same request as for a recommendation without `limits`. A catalogue is only needed to name its telescopes and
    /// items by id. `Accept: image/svg+xml` asks for a picture of the powers. An example that runs as it stands is chosen above the body.
    /// </remarks>
    /// <response code="200">The assessment.</response>
    public static async Task<Results<SpokenResult<AssessmentAnswer>, PictureResult, ProblemResult>> AssessAsync(
        HttpRequest request, Shelf shelf, AnswerDesk answers, CancellationToken gone)
    {
        var received = await FrontDoor.ReceiveAsync(request, gone);
        using var body = received.Refusal is { } turnedAway ? new OpenedBody(turnedAway) : StrictJson.Parse(received.Bytes);
        if (body.Refusal is { } refusal)
        {
            return refusal;
        }

        var faults = new Faults();
        if (AssessmentReader.Read(body.Json, shelf, faults) is not { } asked)
        {
            return ProblemResult.Of(faults);
        }

        return received.Form == AnswerForm.Picture
            ? new PictureResult(await answers.WriteAsync(_ => AssessmentScene.Of(asked), gone))
            : new SpokenResult<AssessmentAnswer>(await answers.WriteAsync(budget => AssessmentWriter.Write(asked, budget), gone));
    }
}
