using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Contract.Languages;

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

    /// <summary>By the most places of a figure.</summary>
    private static readonly ImmutableArray<string> Formats =
        [.. Enumerable.Range(0, Precision.MostPlaces + 1).Select(places => "0." + new string('#', places))];

    /// <summary>The sentence in words.</summary>
    public string In(Language language)
    {
        var precision = new Precision();
        NoteFigures(language, precision);
        var words = Words(language, precision);
        return BeginsWithMadeUpName(language) ? string.Concat(words[..1].ToUpperInvariant(), words.AsSpan(1)) : words;
    }

    private string Words(Language language, Precision precision)
    {
        var words = new StringBuilder();
        foreach (var part in PartsIn(language))
        {
            words.Append(part.Text).Append(part.Name is null ? "" : Fill(part, language, precision));
        }

        return words.ToString();
    }

    private Part[] PartsIn(Language language) => Parts.GetOrAdd(language.Sentences[Key], TakeApart);

    /// <summary>Notes the figures that the sentence and those within it show, each with how it is written.</summary>
    private void NoteFigures(Language language, Precision precision)
    {
        foreach (var part in PartsIn(language))
        {
            if (part.Name is not null)
            {
                NoteFigures(ValueOf(part.Name), part.How, language, precision);
            }
        }
    }

    private static void NoteFigures(object value, string how, Language language, Precision precision)
    {
        switch (value)
        {
            case double figure:
                precision.Note(how, figure);
                break;
            case Sentence sentence:
                sentence.NoteFigures(language, precision);
                break;
            case Array list:
                foreach (var one in list)
                {
                    NoteFigures(one, how, language, precision);
                }

                break;
        }
    }

    /// <summary>A name from the request keeps its small letter at the start of a sentence; one of ours is no name.</summary>
    private bool BeginsWithMadeUpName(Language language) =>
        PartsIn(language)[0] is { Text: "", Name: { } name, How: var how } && IsMadeUp(ValueOf(name) is object[] list ? list[0] : ValueOf(name), how, language);

    private static bool IsMadeUp(object value, string how, Language language) => value switch
    {
        Sentence sentence => sentence.BeginsWithMadeUpName(language),
        Item item => ItemPhrase.IsMadeUp(item),
        string name => how == "telescope" && MadeUpName.PlaceOfTelescope(name) is not null,
        _ => false,
    };

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

    private string Fill(Part part, Language language, Precision precision)
    {
        var value = ValueOf(part.Name!);
        return value is Array list
            ? language.List([.. list.Cast<object>().Select(one => InWords(one, part.How, language, precision)).Distinct()], part.How == "or")
            : InWords(value, part.How, language, precision);
    }

    private object ValueOf(string name)
    {
        foreach (var one in Values)
        {
            if (one.Name == name)
            {
                return one.Value!;
            }
        }

        throw new InvalidOperationException($"The sentence {Key} speaks of `{name}`, which it has no value for.");
    }

    private string InWords(object value, string how, Language language, Precision precision) => how switch
    {
        "x" or "about" => Framed(language.Power, Number(value, precision.PlacesFor(how), language)),
        "deg" => Number(value, precision.PlacesFor(how), language) + "°",
        "mm" => Number(value, precision.PlacesFor(how), language) + " mm",
        "g" => Number(value, precision.PlacesFor(how), language) + " g",
        "cone" => "f/" + Number(value, precision.PlacesFor(how), language),
        "factor" or "whole" or "tenths" => Number(value, precision.PlacesFor(how), language),
        "ratio" => Number(value, "0.00", language),
        "money" => Framed(language.Money, Number(value, "N2", language), ValueOf(Currency)),
        "barrel" => Framed(language.Barrel, Number(InchesOf(value is Barrel known ? Words<Barrel>.Of(known) : (string)value), "0.###", language)),
        "telescope" => MadeUpName.PlaceOfTelescope((string)value) is { } place ? Framed(language.MadeUpTelescope, place) : (string)value,
        _ => value switch
        {
            Sentence sentence => sentence.Words(language, precision),
            Item item => ItemPhrase.Of(item, how, language),
            _ => Convert.ToString(value, language.Numbers)!,
        },
    };

    private static string Number(object value, int places, Language language) =>
        Number(value is double figure ? Rounded.To(figure, places) : value, Formats[places], language);

    private static string Number(object value, string format, Language language) => ((IFormattable)value).ToString(format, language.Numbers);

    private static string Framed(string frame, params ReadOnlySpan<object?> values) => string.Format(CultureInfo.InvariantCulture, frame, values);

    private static double InchesOf(string barrel) =>
        double.Parse(barrel.AsSpan(0, barrel.IndexOf("in", StringComparison.Ordinal)), CultureInfo.InvariantCulture);

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
