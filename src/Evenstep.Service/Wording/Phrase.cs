using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Evenstep.Planning.Advice;

namespace Evenstep.Service.Wording;

/// <summary>Something worth saying: a code, the values that belong to it, and a sentence made of them.</summary>
internal sealed record RemarkAnswer
{
    /// <summary>The code, the same in every language; listed in this document's description.</summary>
    public required string Code { get; init; }

    /// <summary>The sentence, in the language of the answer.</summary>
    public required string Text { get; init; }

    /// <summary>What the sentence is about, by name.</summary>
    public required JsonObject Values { get; init; }
}

/// <summary>Puts remarks into words.</summary>
internal static partial class Phrase
{
    /// <summary>The remark with the sentence that its section, its code and perhaps a variant name.</summary>
    public static RemarkAnswer Of(string section, Remark remark, string? variant = null) => new()
    {
        Code = remark.Code,
        Text = Sentence(variant is null ? $"{section}/{remark.Code}" : $"{section}/{remark.Code}/{variant}", remark.Values),
        Values = ValuesOf(remark.Values),
    };

    public static string Sentence(string key, IReadOnlyCollection<RemarkValue> values) =>
        Slot().Replace(English.Sentences[key], slot => Fill(slot, values));

    public static JsonObject ValuesOf(IEnumerable<RemarkValue> values) =>
        new(values.Select(value => KeyValuePair.Create(value.Name, NodeOf(value.Value, value.Decimals))));

    private static JsonNode? NodeOf(object value, int decimals) => value switch
    {
        double number => JsonValue.Create(Rounded.To(number, decimals)),
        decimal amount => JsonValue.Create(Rounded.Money(amount)),
        int count => JsonValue.Create(count),
        double[] numbers => new JsonArray([.. numbers.Select(number => NodeOf(number, decimals))]),
        string[] texts => new JsonArray([.. texts.Select(text => NodeOf(text, decimals))]),
        _ => JsonValue.Create(value.ToString()),
    };

    private static string Fill(Match slot, IEnumerable<RemarkValue> values)
    {
        var value = values.First(one => one.Name == slot.Groups["name"].Value).Value;
        return value is Array list
            ? string.Join(", ", list.Cast<object>().Select(one => InWords(one, slot.Groups["how"].Value)))
            : InWords(value, slot.Groups["how"].Value);
    }

    private static string InWords(object value, string how) => how switch
    {
        "x" => Number(value, "0") + "x",
        "deg" => Number(value, "0.##") + "°",
        "mm" => Number(value, "0.##") + " mm",
        "g" => Number(value, "0.#") + " g",
        "money" => Number(value, "0.00"),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };

    private static string Number(object value, string format) => ((IFormattable)value).ToString(format, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\{(?<name>\w+)(:(?<how>\w+))?\}", RegexOptions.ExplicitCapture)]
    private static partial Regex Slot();
}
