using System.Collections.Frozen;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Contract.Languages;

/// <summary>How answers are written as JSON.</summary>
internal static class AnswerJson
{
    /// <summary>
    /// Sentences in a language, enumerations as words; and letters as they are, for answers are never pasted into HTML
    /// unescaped (their type says JSON, and no client may guess another).
    /// </summary>
    public static JsonSerializerOptions Configure(JsonSerializerOptions options, Language language)
    {
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.Converters.Add(new WordConverterFactory());
        options.Converters.Add(new SentenceConverter(language));
        options.Converters.Add(new SaidValuesConverter());
        return options;
    }

    /// <summary>Options of their own, with the settings of <see cref="Configure"/>.</summary>
    public static JsonSerializerOptions OptionsIn(Language language) => Configure(new JsonSerializerOptions(JsonSerializerDefaults.Web), language);
}

/// <summary>The contexts that write the answers of a feature, one a language.</summary>
/// <param name="make">Makes one of its options.</param>
internal sealed class AnswerContexts<TContext>(Func<JsonSerializerOptions, TContext> make)
    where TContext : JsonSerializerContext
{
    private readonly FrozenDictionary<Language, TContext> byLanguage =
        Language.All.ToFrozenDictionary(language => language, language => make(AnswerJson.OptionsIn(language)));

    public TContext In(Language language) => byLanguage[language];
}

/// <summary>Writes the values of every enumeration as the words of the contract.</summary>
internal sealed class WordConverterFactory : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) => typeToConvert.IsEnum;

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(WordConverter<>).MakeGenericType(typeToConvert))!;
}

/// <summary>Writes the values of an enumeration as the words of the contract.</summary>
internal sealed class WordConverter<T> : JsonConverter<T>
    where T : struct, Enum
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        Words<T>.Meant(reader.GetString() ?? "") ?? throw new JsonException();

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(Words<T>.Of(value));
}
