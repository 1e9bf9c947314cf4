using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// Something worth saying, as a code with the values that belong to it: whoever speaks to people puts it into words.
/// </summary>
/// <param name="Code">Lower case with hyphens, the same in every language.</param>
/// <param name="Values">What the words are about, by name.</param>
public sealed record Remark(string Code, ImmutableArray<RemarkValue> Values)
{
    /// <summary>What is special about this one, where the same code is said of unlike cases; null for the usual.</summary>
    public string? Variant { get; init; }
}

/// <summary>A value of a remark: a number, a text, a list of either, several values together, or none.</summary>
/// <param name="Name">As in the answer's JSON.</param>
/// <param name="Value">A double, int, decimal, string, barrel, item, or an array of doubles, strings, items or values; null where there is none.</param>
/// <param name="Decimals">To how many places a double is rounded for reading.</param>
public sealed record RemarkValue(string Name, object? Value, int Decimals = 0)
{
    /// <summary>Those of <see cref="Optics.Tolerance.Value"/>.</summary>
    private const int DecimalsWithoutNoise = 9;

    public static RemarkValue Power(string name, double power) => new(name, power, 1);

    public static RemarkValue Ratio(string name, double ratio) => new(name, ratio, 3);

    public static RemarkValue Percent(string name, double percent) => new(name, percent, 2);

    public static RemarkValue Grams(string name, double? grams) => new(name, grams, 1);

    public static RemarkValue Degrees(string name, double degrees) => new(name, degrees, 3);

    public static RemarkValue Millimetres(string name, double millimetres) => new(name, millimetres, 2);

    public static RemarkValue Of(string name, object? value) => new(name, value);

    /// <summary>Whether a figure is below another even when both are rounded for reading.</summary>
    public bool ReadsBelow(RemarkValue other) => Read() < other.Read();

    /// <summary>A figure as it is read. A half is rounded up also where the noise of floating point puts it a trifle below, so that
    /// one figure reckoned in two ways reads the same.</summary>
    public static double Rounded(double value, int decimals) =>
        Math.Round(Math.Round(value, DecimalsWithoutNoise), decimals, MidpointRounding.AwayFromZero);

    private double Read() => Rounded((double)Value!, Decimals);

    /// <summary>The ids of items, and the items by whatever they are called.</summary>
    public static RemarkValue[] ItemsOf(ImmutableArray<Item> items) =>
        [Of("itemIds", items.Select(item => item.Id).ToArray()), Of("names", items.ToArray())];

    /// <summary>The id of an item, and the item by whatever it is called.</summary>
    public static RemarkValue[] ItemOf(Item item) => [Of("itemId", item.Id), Of("name", item)];
}
