using System.Globalization;
using System.Text.Json.Nodes;
using Evenstep.Service.Recommendations;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Documents;

/// <summary>
/// Finishes the schemas that are made of the records of answers: they stay open, for later versions add fields, and
/// everything in them has a limit.
/// </summary>
internal sealed class AnswerSchemas : ISchemaFilter
{
    private const int MostCharacters = 4000;
    private const int MostElements = 100_000;

    public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
    {
        if (schema is not OpenApiSchema plain)
        {
            return;
        }

        if (context.Type == typeof(ExcludedAnswer))
        {
            Become(plain, CountsOrList(context));
        }
        else if (context.Type == typeof(JsonObject))
        {
            Become(plain, new OpenApiSchema { Type = JsonSchemaType.Object });
        }

        Open(plain);
        Limit(plain);
    }

    private static OpenApiSchema CountsOrList(SchemaFilterContext context) => new()
    {
        OneOf =
        [
            context.SchemaGenerator.GenerateSchema(typeof(IReadOnlyDictionary<string, int>), context.SchemaRepository),
            context.SchemaGenerator.GenerateSchema(typeof(IReadOnlyList<ExclusionAnswer>), context.SchemaRepository),
        ],
    };

    private static void Become(OpenApiSchema schema, OpenApiSchema other)
    {
        schema.Type = other.Type;
        schema.Properties = null;
        schema.Required = null;
        schema.OneOf = other.OneOf;
    }

    private static void Open(OpenApiSchema schema) => schema.AdditionalPropertiesAllowed = true;

    private static void Limit(OpenApiSchema schema)
    {
        var type = schema.Type & ~JsonSchemaType.Null;
        if (type == JsonSchemaType.String && schema.Enum is not { Count: > 0 })
        {
            schema.MaxLength ??= MostCharacters;
        }
        else if (type == JsonSchemaType.Array)
        {
            schema.MaxItems ??= MostElements;
        }
        else if (type == JsonSchemaType.Integer)
        {
            schema.Minimum ??= "0";
            schema.Maximum ??= int.MaxValue.ToString(CultureInfo.InvariantCulture);
        }
    }
}
