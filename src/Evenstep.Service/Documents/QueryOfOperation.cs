using System.Text.Json.Nodes;
using Evenstep.Service.Catalogues;
using Evenstep.Service.ProductPages;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Documents;

/// <summary>Describes the address of an endpoint: its query from the table of fields that reads it.</summary>
internal sealed class QueryOfOperation : IOperationFilter
{
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        if (context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<TakesQuery>().FirstOrDefault() is not { } takes)
        {
            return;
        }

        foreach (var parameter in operation.Parameters!.OfType<OpenApiParameter>())
        {
            parameter.Description = takes.Path.First(part => part.Name == parameter.Name).Meaning;
            parameter.Schema = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = ItemFields.MostIdCharacters };
        }

        foreach (var parameter in takes.Query.Parameters)
        {
            operation.Parameters!.Add(OfQuery(parameter, context.Document));
        }
    }

    private static OpenApiParameter OfQuery(QueryParameter parameter, OpenApiDocument document)
    {
        var schema = parameter.Field.AnyShape.Describe(document);
        if (schema is OpenApiSchema plain && parameter.Field.DefaultJson is { } standard)
        {
            plain.Default = JsonNode.Parse(standard);
        }

        return new OpenApiParameter { Name = parameter.Name, In = ParameterLocation.Query, Description = parameter.Field.Meaning, Schema = schema };
    }
}
