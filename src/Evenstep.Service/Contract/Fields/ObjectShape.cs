using System.Collections.Frozen;
using System.Text.Json;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>An object with a table of fields. Every field of the table is read, and no other is accepted.</summary>
/// <param name="name">The schema's name in the OpenAPI document.</param>
/// <param name="meaning">What the object is.</param>
/// <param name="fields">The table.</param>
/// <param name="form">What to call it beside other variants, such as "a zoom"; null if it has none.</param>
/// <param name="begin">Makes the record that the fields are read into; null for one with nothing in it.</param>
internal sealed class ObjectShape<T>(string name, string meaning, Field[] fields, string? form = null, Func<T>? begin = null) : Shape<T>, IVariant
    where T : class, new()
{
    private readonly ReadInto<T>[] readers = [.. fields.Select(FieldTable<T>.ReaderOf)];

    private readonly FrozenDictionary<string, int> indices =
        fields.Select((field, index) => (field.Name, index)).ToFrozenDictionary(pair => pair.Name, pair => pair.index, StringComparer.Ordinal);

    public string Form => form ?? meaning;

    /// <summary>The table.</summary>
    public IReadOnlyList<Field> Fields => fields;

    public IEnumerable<string> FieldNames => fields.Where(row => row.AnyShape is not AbsentShape).Select(row => row.Name);

    public override ErrorMessage Allowed { get; } = fields.Where(field => field.IsRequired).Select(field => field.Name).ToList() is { Count: > 0 } required
        ? ErrorMessage.Of("error/allowed/object", ("fields", ErrorText.List(required)))
        : ErrorMessage.Of("error/allowed/object/any", ("field", fields[0].Name));

    public override T? Read(JsonElement value, RequestPointer pointer, Faults faults) => Read(value, pointer, faults, []);

    /// <summary>Reads, knowing other variants whose fields a caller may have mixed in.</summary>
    public T? Read(JsonElement value, RequestPointer pointer, Faults faults, IReadOnlyCollection<IVariant> others)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        var given = new JsonElement[fields.Length];
        foreach (var property in value.EnumerateObject())
        {
            Sort(property, given, pointer, faults, others);
        }

        var record = begin?.Invoke() ?? new T();
        for (var i = 0; i < fields.Length; i++)
        {
            ReadField(i, given[i], record, pointer, faults);
        }

        return record;
    }

    /// <summary>Reports a name that no field has.</summary>
    public void ReportUnknown(string key, RequestPointer pointer, Faults faults)
    {
        if (!indices.ContainsKey(key))
        {
            faults.Add(pointer.At(key), FaultCode.UnknownField, () => UnknownField(key, []));
        }
    }

    public override IOpenApiSchema Describe(OpenApiDocument document)
    {
        var schemas = document.Components!.Schemas ??= new Dictionary<string, IOpenApiSchema>();
        if (!schemas.ContainsKey(name))
        {
            var schema = new OpenApiSchema { Type = JsonSchemaType.Object, Description = meaning, AdditionalPropertiesAllowed = false };
            schemas.Add(name, schema);
            schema.Required = fields.Where(field => field.IsRequired).Select(field => field.Name).ToHashSet();
            schema.Properties = fields.ToDictionary(field => field.Name, field => field.Describe(document));
        }

        return new OpenApiSchemaReference(name, document);
    }

    private void Sort(JsonProperty property, JsonElement[] given, RequestPointer pointer, Faults faults, IReadOnlyCollection<IVariant> others)
    {
        if (ErrorText.NameOf(property) is not { } key)
        {
            faults.Add(pointer, FaultCode.InvalidText, () => ErrorMessage.Of("error/field-name"));
        }
        else if (!indices.TryGetValue(key, out var i))
        {
            faults.Add(pointer.At(key), FaultCode.UnknownField, () => UnknownField(key, others));
        }
        else if (given[i].ValueKind != JsonValueKind.Undefined)
        {
            faults.Add(pointer.At(key), FaultCode.Duplicate, () => ErrorMessage.Of("error/field-twice", ("field", key)));
        }
        else
        {
            given[i] = property.Value;
        }
    }

    private void ReadField(int i, JsonElement given, T record, RequestPointer pointer, Faults faults)
    {
        var field = fields[i];
        if (given.ValueKind is not (JsonValueKind.Undefined or JsonValueKind.Null))
        {
            readers[i](record, given, pointer.At(field.Name), faults);
        }
        else if (field.IsRequired)
        {
            var key = given.ValueKind == JsonValueKind.Null ? "error/is-null" : "error/missing";
            faults.Add(pointer.At(field.Name), FaultCode.Missing, () => ErrorMessage.Of(key, ("field", field.Name), ("allowed", field.AnyShape.Allowed)));
        }
    }

    private ErrorMessage UnknownField(string key, IReadOnlyCollection<IVariant> others)
    {
        var shown = ErrorText.Quoted(key);
        if (others.FirstOrDefault(other => other.FieldNames.Contains(key)) is { } other)
        {
            return $"{shown} does not go with the other fields here: it goes with {other.Form}, not with {Form}. Leave it out, or keep to that form.";
        }

        if (fields.FirstOrDefault(row => row.AnyShape is IVariant part && part.FieldNames.Contains(key)) is { } home)
        {
            return ErrorMessage.Of("error/unknown-field/home", ("field", shown), ("home", home.Name));
        }

        return NearestName.To(key, FieldNames) is { } nearest
            ? ErrorMessage.Of("error/unknown-field/nearest", ("field", shown), ("nearest", nearest))
            : ErrorMessage.Of("error/unknown-field", ("field", shown), ("known", ErrorText.List(FieldNames)));
    }
}
