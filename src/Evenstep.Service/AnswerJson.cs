using System.Collections.Frozen;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Assessments;
using Evenstep.Service.Batches;
using Evenstep.Service.BuyingPaths;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Errors;
using Evenstep.Service.Health;
using Evenstep.Service.ProductPages;
using Evenstep.Service.Reading;
using Evenstep.Service.Recommendations;
using Evenstep.Service.SecondOpinions;
using Evenstep.Service.SpendingCurves;
using Evenstep.Service.Targets;
using Evenstep.Service.Wording;

namespace Evenstep.Service;

/// <summary>How answers are written as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(RecommendationAnswer))]
[JsonSerializable(typeof(AssessmentAnswer))]
[JsonSerializable(typeof(SecondOpinionAnswer))]
[JsonSerializable(typeof(SpendingCurveAnswer))]
[JsonSerializable(typeof(BuyingPathAnswer))]
[JsonSerializable(typeof(KnownTargetsAnswer))]
[JsonSerializable(typeof(StoredCatalogueAnswer))]
[JsonSerializable(typeof(CatalogueListAnswer))]
[JsonSerializable(typeof(MatchAnswer))]
[JsonSerializable(typeof(JsonObject))]
[JsonSerializable(typeof(BatchAnswer))]
[JsonSerializable(typeof(ProblemDocument))]
[JsonSerializable(typeof(HealthAnswer))]
[JsonSerializable(typeof(IReadOnlyDictionary<string, int>))]
[JsonSerializable(typeof(IReadOnlyList<ExclusionAnswer>))]
internal sealed partial class AnswerJson : JsonSerializerContext
{
    private static readonly FrozenDictionary<Language, AnswerJson> ByLanguage = Language.All.ToFrozenDictionary(
        language => language, language => new AnswerJson(Configure(new JsonSerializerOptions(JsonSerializerDefaults.Web), language)));

    /// <summary>The context for what is the same in every language; sentences come out in English.</summary>
    public static AnswerJson Shared => In(Language.English);

    /// <summary>The context that writes sentences in a language, with the settings of <see cref="Configure"/>.</summary>
    public static AnswerJson In(Language language) => ByLanguage[language];

    /// <summary>
    /// Sentences in a language, enumerations as words; and letters as they are, for answers are never pasted into HTML
    /// unescaped (their type says JSON, and no client may guess another).
    /// </summary>
    public static JsonSerializerOptions Configure(JsonSerializerOptions options, Language language)
    {
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        JsonConverter[] words =
        [
            new WordConverter<Outcome>(), new WordConverter<ReachedLimit>(), new WordConverter<Excluded>(), new WordConverter<ItemKind>(), new WordConverter<FaultCode>(),
            new WordConverter<RangeEnd>(), new WordConverter<TrueFieldSource>(), new WordConverter<NotUsable>(),
            new WordConverter<TargetKind>(), new WordConverter<WidthSource>(),
            new SentenceConverter(language), new SaidValuesConverter(),
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
