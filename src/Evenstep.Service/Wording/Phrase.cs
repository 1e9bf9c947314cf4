using System.Text.Json.Nodes;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Service.Reading;

namespace Evenstep.Service.Wording;

/// <summary>Something worth saying: a code, the values that belong to it, and a sentence made of them.</summary>
internal sealed record RemarkAnswer
{
    /// <summary>The code, the same in every language; listed in this document's description.</summary>
    public required string Code { get; init; }

    /// <summary>The sentence, in the language of the answer.</summary>
    public required Sentence Text { get; init; }

    /// <summary>What the sentence is about, by name.</summary>
    public required JsonObject Values { get; init; }
}

/// <summary>Finds the sentences for remarks.</summary>
internal static class Phrase
{
    /// <summary>The remark with the sentence that its section, its code and perhaps a variant name.</summary>
    public static RemarkAnswer Of(string section, Remark remark, string? variant = null) => new()
    {
        Code = remark.Code,
        Text = new Sentence((variant ?? remark.Variant) is { } special ? $"{section}/{remark.Code}/{special}" : $"{section}/{remark.Code}", remark.Values),
        Values = ValuesOf(remark.Values),
    };

    public static JsonObject ValuesOf(IEnumerable<RemarkValue> values) =>
        new(values.Select(value => KeyValuePair.Create(value.Name, NodeOf(value.Value, value.Decimals))));

    private static JsonNode? NodeOf(object? value, int decimals) => value switch
    {
        double number => JsonValue.Create(Rounded.To(number, decimals)),
        decimal amount => JsonValue.Create(Rounded.Money(amount)),
        int count => JsonValue.Create(count),
        Barrel barrel => JsonValue.Create(Words<Barrel>.Of(barrel)),
        double[] numbers => new JsonArray([.. numbers.Select(number => NodeOf(number, decimals))]),
        string[] texts => new JsonArray([.. texts.Select(text => NodeOf(text, decimals))]),
        RemarkValue[] parts => ValuesOf(parts),
        _ => JsonValue.Create(value?.ToString()),
    };
}
