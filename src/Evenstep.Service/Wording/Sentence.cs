using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Service.Reading;

namespace Evenstep.Service.Wording;

/// <summary>
/// Something to say that is in no language yet. Answers are made of these, and speak a language only once they are written
/// out.
/// </summary>
/// <param name="Key">Names the sentence in the tables of every language.</param>
/// <param name="Values">What its slots are filled with, by name. A value may itself be a sentence.</param>
internal sealed partial record Sentence(string Key, ImmutableArray<RemarkValue> Values)
{
    /// <summary>The value whose amounts are meant, where a sentence speaks of money.</summary>
    public const string Currency = "currency";

    /// <summary>Sentences taken apart, each once: pictures say hundreds.</summary>
    private static readonly ConcurrentDictionary<string, Part[]> Parts = new(StringComparer.Ordinal);

    /// <summary>The sentence in words.</summary>
    public string In(Language language)
    {
        var words = new StringBuilder();
        foreach (var part in Parts.GetOrAdd(language.Sentences[Key], TakeApart))
        {
            words.Append(part.Text).Append(part.Name is null ? "" : Fill(part, language));
        }

        return words.ToString();
    }

    private static Part[] TakeApart(string sentence)
    {
        List<Part> parts = [];
        var end = 0;
        foreach (Match slot in Slot().Matches(sentence))
        {
            parts.Add(new Part(sentence[end..slot.Index], slot.Groups["name"].Value, slot.Groups["how"].Value));
            end = slot.Index + slot.Length;
        }

        return [.. parts, new Part(sentence[end..], null, "")];
    }

    private string Fill(Part part, Language language)
    {
        var value = ValueOf(part.Name!);
        return value is Array list
            ? string.Join(", ", list.Cast<object>().Select(one => InWords(one, part.How, language)))
            : InWords(value, part.How, language);
    }

    private object ValueOf(string name) => Values.First(one => one.Name == name).Value!;

    private string InWords(object value, string how, Language language) => how switch
    {
        "x" => Framed(language.Power, Number(value, "0", language)),
        "deg" => Number(value, "0.##", language) + "°",
        "mm" => Number(value, "0.##", language) + " mm",
        "ratio" => Number(value, "0.00", language),
        "whole" => Number(value, "0", language),
        "tenths" => Number(value, "0.#", language),
        "g" => Number(value, "0.#", language) + " g",
        "money" => Framed(language.Money, Number(value, "N2", language), ValueOf(Currency)),
        "barrel" => Framed(language.Barrel, Number(InchesOf(value is Barrel known ? Words<Barrel>.Of(known) : (string)value), "0.###", language)),
        "cone" => "f/" + Number(value, "0.#", language),
        "factor" => Number(value, "0.##", language),
        "telescope" => MadeUpName.PlaceOfTelescope((string)value) is { } place ? Framed(language.MadeUpTelescope, place) : (string)value,
        "item" => MadeUpName.PlaceOfOwned((string)value) is { } place ? Framed(language.MadeUpOwned, place) : (string)value,
        _ => value is Sentence sentence ? sentence.In(language) : Convert.ToString(value, language.Numbers)!,
    };

    private static string Number(object value, string format, Language language) => ((IFormattable)value).ToString(format, language.Numbers);

    private static string Framed(string frame, params ReadOnlySpan<object?> values) => string.Format(CultureInfo.InvariantCulture, frame, values);

    private static double InchesOf(string barrel) => double.Parse(barrel.AsSpan(0, barrel.IndexOf("in", StringComparison.Ordinal)), CultureInfo.InvariantCulture);

    /// <summary>A text as it stands, and perhaps a slot after it with how its value is written.</summary>
    private sealed record Part(string Text, string? Name, string How);

    [GeneratedRegex(@"\{(?<name>\w+)(:(?<how>\w+))?\}", RegexOptions.ExplicitCapture)]
    public static partial Regex Slot();
}

/// <summary>Puts sentences into words as they are written out.</summary>
internal sealed class SentenceConverter(Language language) : JsonConverter<Sentence>
{
    public override Sentence Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Answers are only written.");

    public override void Write(Utf8JsonWriter writer, Sentence value, JsonSerializerOptions options) => writer.WriteStringValue(value.In(language));
}
