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
[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web,
    GenerationMode = JsonSourceGenerationMode.Metadata,
    Converters =
    [
        typeof(WordConverter<Outcome>), typeof(WordConverter<Excluded>), typeof(WordConverter<ItemKind>), typeof(WordConverter<FaultCode>),
        typeof(WordConverter<RangeEnd>), typeof(WordConverter<TrueFieldSource>), typeof(WordConverter<NotUsable>),
    ])]
[JsonSerializable(typeof(RecommendationAnswer))]
[JsonSerializable(typeof(AssessmentAnswer))]
[JsonSerializable(typeof(ProblemDocument))]
[JsonSerializable(typeof(HealthAnswer))]
[JsonSerializable(typeof(IReadOnlyDictionary<string, int>))]
[JsonSerializable(typeof(IReadOnlyList<ExclusionAnswer>))]
internal sealed partial class AnswerJson : JsonSerializerContext;

/// <summary>Writes the values of an enumeration as the words of the contract.</summary>
internal sealed class WordConverter<T> : JsonConverter<T>
    where T : struct, Enum
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        Words<T>.Meant(reader.GetString() ?? "") ?? throw new JsonException();

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(Words<T>.Of(value));
}
