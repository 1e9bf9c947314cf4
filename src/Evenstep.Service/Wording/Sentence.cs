using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using Evenstep.Planning.Advice;

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

    /// <summary>The sentence in words.</summary>
    public string In(Language language) => Slot().Replace(language.Sentences[Key], slot => Fill(slot, language));

    private string Fill(Match slot, Language language)
    {
        var value = ValueOf(slot.Groups["name"].Value);
        var how = slot.Groups["how"].Value;
        return value is Array list
            ? string.Join(", ", list.Cast<object>().Select(one => InWords(one, how, language)))
            : InWords(value, how, language);
    }

    private object ValueOf(string name) => Values.First(one => one.Name == name).Value!;

    private string InWords(object value, string how, Language language) => how switch
    {
        "x" => Framed(language.Power, Number(value, "0", language)),
        "deg" => Number(value, "0.##", language) + "°",
        "mm" => Number(value, "0.##", language) + " mm",
        "g" => Number(value, "0.#", language) + " g",
        "money" => Framed(language.Money, Number(value, "N2", language), ValueOf(Currency)),
        "barrel" => Framed(language.Barrel, Number(InchesOf((string)value), "0.###", language)),
        "factor" => Number(value, "0.##", language),
        "telescope" => MadeUpName.PlaceOfTelescope((string)value) is { } place ? Framed(language.MadeUpTelescope, place) : (string)value,
        "item" => MadeUpName.PlaceOfOwned((string)value) is { } place ? Framed(language.MadeUpOwned, place) : (string)value,
        _ => value is Sentence sentence ? sentence.In(language) : Convert.ToString(value, language.Numbers)!,
    };

    private static string Number(object value, string format, Language language) => ((IFormattable)value).ToString(format, language.Numbers);

    private static string Framed(string frame, params ReadOnlySpan<object?> values) => string.Format(CultureInfo.InvariantCulture, frame, values);

    private static double InchesOf(string barrel) => double.Parse(barrel.AsSpan(0, barrel.IndexOf("in", StringComparison.Ordinal)), CultureInfo.InvariantCulture);

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
