using System.Collections.Frozen;
using System.Reflection;
using System.Text.Json;

namespace Evenstep.Service.Contract.Fields;

/// <summary>Reads the value of a field, which is given and not null, into a record.</summary>
internal delegate void ReadInto<in TRecord>(TRecord record, JsonElement given, RequestPointer pointer, Faults faults);

/// <summary>A field with the property that it is read into.</summary>
/// <param name="Field">As its property declares it.</param>
/// <param name="Property">The property's name.</param>
/// <param name="ReaderOf">Reads the field, or the same with another shape, into the property.</param>
internal sealed record FieldRow<TRecord>(Field Field, string Property, Func<Field, ReadInto<TRecord>> ReaderOf);

/// <summary>The table of fields that the properties of a record declare, in their order.</summary>
internal static class FieldTable<T>
    where T : class, new()
{
    public static readonly IReadOnlyList<FieldRow<T>> Rows =
        [.. typeof(T).GetProperties().Where(property => property.DeclaringType == typeof(T)).OrderBy(property => property.MetadataToken).SelectMany(RowsOf)];

    private static readonly FrozenDictionary<string, FieldRow<T>> ByName = Rows.ToFrozenDictionary(row => row.Field.Name, StringComparer.Ordinal);

    private static readonly Lazy<ObjectShape<T>> WholeShape = new(() => typeof(T).GetCustomAttribute<SchemaAttribute>() is { } schema
        ? new ObjectShape<T>(schema.Name, schema.Meaning, [.. Rows.Select(row => row.Field)])
        : throw new InvalidOperationException($"{typeof(T)} is no object by itself."));

    /// <summary>The object with all fields of the record, as its <see cref="SchemaAttribute"/> says.</summary>
    public static ObjectShape<T> Whole => WholeShape.Value;

    /// <summary>The field that a property declares.</summary>
    public static Field Of(string property) => ByName[FieldName.Of(property)].Field;

    /// <summary>The fields that properties declare.</summary>
    public static IEnumerable<Field> All(params IEnumerable<string> properties) => properties.Select(Of);

    /// <summary>The same where they must be given.</summary>
    public static IEnumerable<Field> Required(params IEnumerable<string> properties) => All(properties).Select(field => field.Required());

    /// <summary>What reads a field into the property of its name; a field that no property declares is only checked.</summary>
    public static ReadInto<T> ReaderOf(Field field) => ByName.TryGetValue(field.Name, out var row) && field.AnyShape is not AbsentShape
        ? row.ReaderOf(field)
        : (_, given, pointer, faults) => field.AnyShape.ReadAny(given, pointer, faults);

    private static IEnumerable<FieldRow<T>> RowsOf(PropertyInfo property) =>
        property.GetCustomAttribute<FieldsOfAttribute>() is { } others ? others.RowsOf<T>(property)
        : property.GetCustomAttribute<FieldAttribute>() is { } declared ? [RowOf(property, declared)]
        : [];

    private static FieldRow<T> RowOf(PropertyInfo property, FieldAttribute declared)
    {
        var shape = property.GetCustomAttribute<SeveralAttribute>() is { } several ? several.Of(declared.Shape) : declared.Shape;
        var field = shape.ToField(FieldName.Of(property.Name), declared.Meaning).With(declared.IsRequired, declared.Default);
        return new FieldRow<T>(field, property.Name, one => one.ReaderInto<T>(property));
    }
}
