using System.Globalization;
using Evenstep.Service.Http.Negotiation;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>Says of an operation that it can answer with a picture.</summary>
internal sealed class PictureOfOperation : IOperationFilter
{
    private const int MostCharacters = 10_000_000;

    private static readonly string Status = StatusCodes.Status200OK.ToString(CultureInfo.InvariantCulture);

    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var offered = context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<OfferedFormats>().FirstOrDefault();
        if (offered?.Forms.Contains(AnswerFormat.Picture) is true && operation.Responses?.TryGetValue(Status, out var response) is true)
        {
            response.Content?.Add(AnswerFormat.Picture.MediaType, new OpenApiMediaType
            {
                Schema = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = MostCharacters, Description = "The power ladder as an SVG picture." },
            });
        }
    }
}
