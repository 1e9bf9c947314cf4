using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Writes recommendations as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(RecommendationAnswer))]
[JsonSerializable(typeof(IReadOnlyDictionary<string, int>))]
[JsonSerializable(typeof(IReadOnlyList<ExclusionAnswer>))]
internal sealed partial class RecommendationJson : JsonSerializerContext
{
    private static readonly AnswerContexts<RecommendationJson> Contexts = new(options => new RecommendationJson(options));

    public static RecommendationJson In(Language language) => Contexts.In(language);
}
