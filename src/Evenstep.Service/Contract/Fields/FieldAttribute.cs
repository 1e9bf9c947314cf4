using Evenstep.Planning.Optics;

namespace Evenstep.Service.Contract.Fields;

/// <summary>
/// Declares a field of a request where its value is kept: a property of the record that is read. Its name in JSON is the
/// property's, in camel case; its value is null where it is missing, null or faulty.
/// </summary>
/// <param name="meaning">What the field means, for the OpenAPI document.</param>
[AttributeUsage(AttributeTargets.Property)]
internal abstract class FieldAttribute(string meaning) : Attribute
{
    public string Meaning => meaning;

    public bool IsRequired { get; init; }

    /// <summary>What stands in for a missing value or null, as JSON; null if there is no such value.</summary>
    public string? Default { get; init; }

    /// <summary>What the value may be, or each value of a list.</summary>
    public abstract Shape Shape { get; }
}

/// <summary>A number within bounds.</summary>
/// <param name="bounds">Their name in <see cref="Bounds"/>.</param>
/// <param name="unit">As it reads after a number; empty for none.</param>
/// <param name="meaning">What the field means.</param>
internal sealed class NumberAttribute(string bounds, string unit, string meaning) : FieldAttribute(meaning)
{
    public override Shape Shape => new NumberShape(BoundsByName.Of(bounds), unit);
}

/// <summary>An amount in the catalogue's currency.</summary>
/// <param name="bounds">Their name in <see cref="Bounds"/>.</param>
/// <param name="meaning">What the field means.</param>
internal sealed class MoneyAttribute(string bounds, string meaning) : FieldAttribute(meaning)
{
    public override Shape Shape => new MoneyShape(BoundsByName.Of(bounds));
}

/// <summary>A whole number, both ends included.</summary>
internal sealed class WholeAttribute(int least, int most, string meaning) : FieldAttribute(meaning)
{
    public override Shape Shape => new WholeShape(least, most);
}

/// <summary>True or false.</summary>
internal sealed class FlagAttribute(string meaning) : FieldAttribute(meaning)
{
    public override Shape Shape => new FlagShape();
}

/// <summary>One of the words for the values of an enumeration.</summary>
internal sealed class ChoiceAttribute<T>(string meaning) : FieldAttribute(meaning)
    where T : struct, Enum
{
    public override Shape Shape => new ChoiceShape<T>();
}

/// <summary>A text of one line.</summary>
internal sealed class TextAttribute(string meaning) : FieldAttribute(meaning)
{
    /// <summary>The most characters (Unicode code points).</summary>
    public int Most { get; init; } = Make.MostNameCharacters;

    public override Shape Shape => Make.OneLine(Most);
}

/// <summary>Texts of the caller's own, by names of the caller's own.</summary>
internal sealed class TextMapAttribute(int most, string meaning) : FieldAttribute(meaning)
{
    public override Shape Shape => new TextMapShape(
        most, Make.OneLine(Make.MostNameCharacters), new TextShape(Make.MostNameCharacters, TextShape.AnyText, "none of them NUL", least: 0));
}

/// <summary>An object with all fields of a record that has a <see cref="SchemaAttribute"/>.</summary>
internal sealed class PartAttribute<T>(string meaning) : FieldAttribute(meaning)
    where T : class, new()
{
    public override Shape Shape => FieldTable<T>.Whole;
}

/// <summary>A value of a shape of its own, such as one of several forms.</summary>
/// <param name="home">Where the shape is.</param>
/// <param name="shape">The name of the static field that is the shape. It must not need the table of the record it describes a field of.</param>
/// <param name="meaning">What the field means.</param>
internal sealed class ShapedAttribute(Type home, string shape, string meaning) : FieldAttribute(meaning)
{
    public override Shape Shape => (Shape)home.GetField(shape)!.GetValue(null)!;
}

file static class BoundsByName
{
    public static Bounds Of(string name) => (Bounds)typeof(Bounds).GetField(name)!.GetValue(null)!;
}
