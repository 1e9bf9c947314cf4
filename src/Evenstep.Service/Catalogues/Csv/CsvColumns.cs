using System.Collections.Frozen;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>
/// The columns that a CSV of items may have: the fields of items of every kind, and one for each of the shop's own
/// attributes, such as `attributes.colour`.
/// </summary>
internal static class CsvColumns
{
    public const string AttributeBeginning = "attributes.";

    /// <summary>Every field of any kind but the attributes, in the order in which they are written.</summary>
    public static readonly IReadOnlyList<Field> Fields =
    [
        .. ItemShapes.ForSale.Kinds.Values.SelectMany(kind => kind.Fields)
            .Where(field => field.Name != FieldName.Of(nameof(ItemRequest.Attributes)))
            .DistinctBy(field => field.Name)
            .OrderBy(Rank),
    ];

    private static readonly FrozenDictionary<string, Field> ByName = Fields.ToFrozenDictionary(field => field.Name, StringComparer.Ordinal);

    /// <summary>The field that a column holds; null for a column that holds none.</summary>
    public static Field? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>The attribute that a column holds; null for a column that holds none.</summary>
    public static string? AttributeOf(string name) =>
        name.Length > AttributeBeginning.Length && name.StartsWith(AttributeBeginning, StringComparison.Ordinal) ? name[AttributeBeginning.Length..] : null;

    public static bool Knows(string name) => Find(name) is not null || AttributeOf(name) is not null;

    /// <summary>Whether every item needs it, of whatever kind.</summary>
    public static bool IsRequiredOfAll(Field field) =>
        ItemShapes.ForSale.Kinds.Values.All(kind => kind.Fields.Any(one => one.Name == field.Name && one.IsRequired));

    private static bool IsOfAll(Field field) => ItemShapes.ForSale.Kinds.Values.All(kind => kind.FieldNames.Contains(field.Name));

    /// <summary>What a reader looks for comes first, then what only some kinds have; the rest keeps the order of the tables of fields.</summary>
    private static int Rank(Field field) => field.Name switch
    {
        "id" => 0,
        KindShape<ItemRequest>.Discriminator => 1,
        "name" => 2,
        "price" => 3,
        _ => IsOfAll(field) ? 5 : 4,
    };
}
