using System.Globalization;
using System.Reflection;
using System.Text.Json;
using Evenstep.Service.Contract.Fields;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Http.OpenApi;

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

        if (context.Type.GetCustomAttribute<OneOfTypesAttribute>() is { } oneOf)
        {
            BecomeOneOf(oneOf.Types, plain, context);
        }

        plain.AdditionalPropertiesAllowed = true;
        Limit(plain);
        MarkNulls(plain, context.Type);
    }

    private static void BecomeOneOf(IReadOnlyList<Type> types, OpenApiSchema schema, SchemaFilterContext context)
    {
        schema.Type = null;
        schema.Properties = null;
        schema.Required = null;
        schema.OneOf = [.. types.Select(type => context.SchemaGenerator.GenerateSchema(type, context.SchemaRepository))];
    }

    /// <summary>A property may be null exactly where the record says so.</summary>
    private static void MarkNulls(OpenApiSchema schema, Type type)
    {
        foreach (var property in type.GetProperties())
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            if (schema.Properties?.TryGetValue(name, out var described) is true)
            {
                var mayBeNull = new NullabilityInfoContext().Create(property).ReadState == NullabilityState.Nullable;
                schema.Properties[name] = mayBeNull ? WithNull(described) : WithoutNull(described);
            }
        }
    }

    private static OpenApiSchema WithNull(IOpenApiSchema schema)
    {
        if (schema is not OpenApiSchema plain)
        {
            return new OpenApiSchema { Description = schema.Description, OneOf = [schema, new OpenApiSchema { Type = JsonSchemaType.Null }] };
        }

        plain.Type |= JsonSchemaType.Null;
        return plain;
    }

    private static IOpenApiSchema WithoutNull(IOpenApiSchema schema)
    {
        if (schema is OpenApiSchema plain)
        {
            plain.Type &= ~JsonSchemaType.Null;
        }

        return schema;
    }

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
