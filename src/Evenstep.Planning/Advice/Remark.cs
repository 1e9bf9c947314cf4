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
/// <param name="Value">A double, int, decimal, string, barrel, or an array of doubles, strings or values; null where there is none.</param>
/// <param name="Decimals">To how many places a double is rounded for reading.</param>
public sealed record RemarkValue(string Name, object? Value, int Decimals = 0)
{
    public static RemarkValue Power(string name, double power) => new(name, power, 1);

    public static RemarkValue Ratio(string name, double ratio) => new(name, ratio, 3);

    public static RemarkValue Percent(string name, double percent) => new(name, percent, 2);

    public static RemarkValue Grams(string name, double? grams) => new(name, grams, 1);

    public static RemarkValue Degrees(string name, double degrees) => new(name, degrees, 3);

    public static RemarkValue Millimetres(string name, double millimetres) => new(name, millimetres, 2);

    public static RemarkValue Of(string name, object? value) => new(name, value);

    /// <summary>Whether a figure is below another even when both are rounded for reading.</summary>
    public bool ReadsBelow(RemarkValue other) => Read() < other.Read();

    private double Read() => Math.Round((double)Value!, Decimals, MidpointRounding.AwayFromZero);

    /// <summary>The ids of items, and what the shop calls them.</summary>
    public static RemarkValue[] ItemsOf(ImmutableArray<Item> items) =>
    [
        Of("itemIds", items.Select(item => item.Id).ToArray()),
        Of("names", items.Select(item => item.Name ?? item.Id).ToArray()),
    ];
}
