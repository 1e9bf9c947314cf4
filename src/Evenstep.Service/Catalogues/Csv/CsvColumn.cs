using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>A column of a CSV: that of a field, that of an attribute, or one that is left out.</summary>
/// <param name="Name">As the header has it.</param>
/// <param name="Field">Null unless it holds one.</param>
/// <param name="Attribute">The attribute's name; null unless it holds one.</param>
internal sealed record CsvColumn(string Name, Field? Field, string? Attribute)
{
    public bool IsKnown => Field is not null || Attribute is not null;

    public static CsvColumn Of(string name) => new(name, CsvColumns.Find(name), CsvColumns.AttributeOf(name));
}
