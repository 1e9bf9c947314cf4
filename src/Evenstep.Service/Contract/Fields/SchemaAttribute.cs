using System.Reflection;

namespace Evenstep.Service.Contract.Fields;

/// <summary>Says of a record that it is one object of the OpenAPI document, with all its fields.</summary>
/// <param name="name">The schema's name.</param>
/// <param name="meaning">What the object is.</param>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class SchemaAttribute(string name, string meaning) : Attribute
{
    public string Name => name;

    public string Meaning => meaning;
}

/// <summary>Puts the fields of another record where a property is declared; they are read into the record that it holds.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal abstract class FieldsOfAttribute : Attribute
{
    /// <summary>Properties whose fields are required here, though not everywhere.</summary>
    public string[] Required { get; init; } = [];

    public abstract IEnumerable<FieldRow<TRecord>> RowsOf<TRecord>(PropertyInfo property);
}

/// <inheritdoc/>
internal sealed class FieldsOfAttribute<T> : FieldsOfAttribute
    where T : class, new()
{
    public override IEnumerable<FieldRow<TRecord>> RowsOf<TRecord>(PropertyInfo property)
    {
        var part = property.GetMethod!.CreateDelegate<Func<TRecord, T>>();
        return FieldTable<T>.Rows.Select(row => new FieldRow<TRecord>(
            Required.Contains(row.Property) ? row.Field.Required() : row.Field, row.Property, field => Through(part, row.ReaderOf(field))));
    }

    private static ReadInto<TRecord> Through<TRecord>(Func<TRecord, T> part, ReadInto<T> read) =>
        (record, given, pointer, faults) => read(part(record), given, pointer, faults);
}
