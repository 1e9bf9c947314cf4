using System.Net.Mime;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Documents;

/// <summary>Describes the body of an endpoint from the table of fields that reads it, with the examples from its files.</summary>
internal sealed class BodyOfOperation : IOperationFilter
{
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        if (context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<TakesBody>().FirstOrDefault() is not { } takes)
        {
            return;
        }

        operation.RequestBody = new OpenApiRequestBody
        {
            Required = true,
            Content = new Dictionary<string, IOpenApiMediaType>
            {
                [MediaTypeNames.Application.Json] = new OpenApiMediaType
                {
                    Schema = takes.Body.Describe(context.Document),
                    Examples = Example.BeginningWith(takes.Examples).ToDictionary(
                        example => example.Name,
                        IOpenApiExample (example) => new OpenApiExample { Value = example.Body }),
                },
            },
        };
    }
}
