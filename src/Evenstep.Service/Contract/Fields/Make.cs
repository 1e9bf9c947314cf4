namespace Evenstep.Service.Contract.Fields;

/// <summary>Makes fields that are no property of a record, such as those of a query.</summary>
internal static class Make
{
    public const int MostNameCharacters = 200;

    public static Field<int?> Whole(string name, int least, int most, string meaning) => new(name, new WholeShape(least, most), meaning);

    /// <summary>A field of another variant of the object.</summary>
    public static Field<object?> Absent(string name, string meaning) => new(name, new AbsentShape(), meaning);

    public static Field<T?> Choice<T>(string name, string meaning)
        where T : struct, Enum => new(name, new ChoiceShape<T>(), meaning);

    public static Field<T> Of<T>(string name, Shape<T> shape, string meaning) => new(name, shape, meaning);

    public static Field<IReadOnlyList<T?>> ListOf<T>(string name, Shape<T> element, int least, int most, string meaning, bool differ = false) =>
        new(name, new ListShape<T>(element, least, most, differ), meaning);

    public static TextShape OneLine(int most) => new(most, TextShape.OneLine, ErrorMessage.Of("error/pattern/one-line"));
}
