using System.Text.Json.Nodes;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Routing;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>Describes the address of an endpoint: its query from the table of fields that reads it.</summary>
internal sealed class QueryOfOperation : IOperationFilter
{
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var metadata = context.ApiDescription.ActionDescriptor.EndpointMetadata;
        DescribePath(operation, metadata.OfType<DescribesPath>().LastOrDefault());
        foreach (var field in metadata.OfType<QueryRule>().LastOrDefault()?.Parameters ?? [])
        {
            operation.Parameters ??= [];
            operation.Parameters.Add(OfQuery(field, context.Document));
        }
    }

    private static void DescribePath(OpenApiOperation operation, DescribesPath? described)
    {
        foreach (var (name, meaning) in described?.Parts ?? [])
        {
            var parameter = operation.Parameters!.OfType<OpenApiParameter>().Single(one => one.Name == name);
            parameter.Description = meaning;
            parameter.Schema = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = described!.MostCharacters };
        }
    }

    private static OpenApiParameter OfQuery(Field field, OpenApiDocument document)
    {
        var schema = field.AnyShape.Describe(document);
        if (schema is OpenApiSchema plain && field.DefaultJson is { } standard)
        {
            plain.Default = JsonNode.Parse(standard);
        }

        return new OpenApiParameter { Name = field.Name, In = ParameterLocation.Query, Description = field.Meaning, Schema = schema };
    }
}
