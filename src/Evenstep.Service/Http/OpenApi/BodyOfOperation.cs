using System.Net.Mime;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Endpoints;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>Describes the body of an endpoint from the table of fields that reads it, with the examples from its files.</summary>
internal sealed class BodyOfOperation : IOperationFilter
{
    private const string Ok = "200";

    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var metadata = context.ApiDescription.ActionDescriptor.EndpointMetadata;
        if (metadata.OfType<TakesBody>().FirstOrDefault() is { } takes)
        {
            operation.RequestBody =
                new OpenApiRequestBody { Required = true, Content = ContentOf(takes.MediaType, takes.Body, takes.Examples, takes.Csv, context) };
        }

        if (metadata.OfType<GivesBody>().FirstOrDefault() is { } gives)
        {
            operation.Responses![Ok] = new OpenApiResponse
            {
                Description = operation.Responses[Ok].Description,
                Content = ContentOf(MediaTypeNames.Application.Json, gives.Body, gives.Examples, gives.Csv, context)
            };
        }
    }

    private static Dictionary<string, IOpenApiMediaType> ContentOf(string mediaType, Shape body, string examples, string? csv, OperationFilterContext context)
    {
        var content = new Dictionary<string, IOpenApiMediaType>
        {
            [mediaType] = new OpenApiMediaType
            {
                Schema = body.Describe(context.Document),
                Examples = Example.BeginningWith(examples).ToDictionary(
                    example => example.Name,
                    IOpenApiExample (example) => new OpenApiExample { Value = example.Body }),
            },
        };
        if (csv is not null)
        {
            content.Add(MediaTypeNames.Text.Csv, new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String }, Example = csv });
        }

        return content;
    }
}
