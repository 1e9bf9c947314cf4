using System.Reflection;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>A row of an object's table of fields: its name, what it may be, and what it means.</summary>
internal abstract record Field(string Name, string Meaning)
{
    public bool IsRequired { get; private init; }

    /// <summary>What stands in for a missing value or null, as JSON; null if there is no such value.</summary>
    public string? DefaultJson { get; private init; }

    public abstract Shape AnyShape { get; }

    /// <summary>The same field where it must be given.</summary>
    public Field Required() => this with { IsRequired = true };

    /// <summary>The same field in a change: left out it stays as it is, null takes it away.</summary>
    public Field InChange() => this with { IsRequired = false, DefaultJson = null };

    /// <summary>The same field where it need not be given.</summary>
    public Field Optional() => this with { IsRequired = false };

    public Field With(bool isRequired, string? defaultJson) => this with { IsRequired = isRequired, DefaultJson = defaultJson };

    /// <summary>What reads the field into a property of a record, whose type must be that of the field's value.</summary>
    public abstract ReadInto<TRecord> ReaderInto<TRecord>(PropertyInfo property);

    /// <summary>The schema; null stands for the default wherever a field is optional.</summary>
    public IOpenApiSchema Describe(OpenApiDocument document)
    {
        var schema = AnyShape.Describe(document);
        return schema is OpenApiSchema plain ? Annotated(plain) : IsRequired ? schema : WithNull(schema);
    }

    private OpenApiSchema Annotated(OpenApiSchema schema)
    {
        schema.Description = Meaning;
        schema.Default = DefaultJson is null ? null : JsonNode.Parse(DefaultJson);
        if (!IsRequired)
        {
            schema.Type |= JsonSchemaType.Null;
            schema.Enum?.Add(JsonNullSentinel.JsonNull);
        }

        return schema;
    }

    private OpenApiSchema WithNull(IOpenApiSchema reference) => new()
    {
        Description = Meaning,
        OneOf = [reference, new OpenApiSchema { Type = JsonSchemaType.Null }],
    };
}

/// <summary>A field whose value, once read, is of one (nullable) type.</summary>
internal sealed record Field<T>(string Name, Shape<T> Shape, string Meaning) : Field(Name, Meaning)
{
    public override Shape AnyShape => Shape;

    public Field<T> Defaulting(string json) => (Field<T>)With(IsRequired, json);

    public override ReadInto<TRecord> ReaderInto<TRecord>(PropertyInfo property)
    {
        var set = property.SetMethod!.CreateDelegate<Action<TRecord, T?>>();
        return (record, given, pointer, faults) => set(record, Shape.Read(given, pointer, faults));
    }
}
