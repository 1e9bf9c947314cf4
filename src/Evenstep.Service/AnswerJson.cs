using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Assessments;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Errors;
using Evenstep.Service.Health;
using Evenstep.Service.Reading;
using Evenstep.Service.Recommendations;

namespace Evenstep.Service;

/// <summary>How answers are written as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(RecommendationAnswer))]
[JsonSerializable(typeof(AssessmentAnswer))]
[JsonSerializable(typeof(ProblemDocument))]
[JsonSerializable(typeof(HealthAnswer))]
[JsonSerializable(typeof(IReadOnlyDictionary<string, int>))]
[JsonSerializable(typeof(IReadOnlyList<ExclusionAnswer>))]
internal sealed partial class AnswerJson : JsonSerializerContext
{
    /// <summary>The context with the settings of <see cref="Configure"/>.</summary>
    public static AnswerJson Shared { get; } = new(Configure(new JsonSerializerOptions(JsonSerializerDefaults.Web)));

    /// <summary>
    /// Enumerations as words; and letters as they are, for answers are never pasted into HTML unescaped (their type
    /// says JSON, and no client may guess another).
    /// </summary>
    public static JsonSerializerOptions Configure(JsonSerializerOptions options)
    {
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        JsonConverter[] words =
        [
            new WordConverter<Outcome>(), new WordConverter<Excluded>(), new WordConverter<ItemKind>(), new WordConverter<FaultCode>(),
            new WordConverter<RangeEnd>(), new WordConverter<TrueFieldSource>(), new WordConverter<NotUsable>(),
        ];
        foreach (var converter in words)
        {
            options.Converters.Add(converter);
        }

        return options;
    }
}

/// <summary>Writes the values of an enumeration as the words of the contract.</summary>
internal sealed class WordConverter<T> : JsonConverter<T>
    where T : struct, Enum
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        Words<T>.Meant(reader.GetString() ?? "") ?? throw new JsonException();

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(Words<T>.Of(value));
}
