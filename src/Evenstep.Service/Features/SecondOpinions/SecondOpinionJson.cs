using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>Writes second opinions as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(SecondOpinionAnswer))]
[JsonSerializable(typeof(IReadOnlyDictionary<string, int>))]
[JsonSerializable(typeof(IReadOnlyList<ExclusionAnswer>))]
internal sealed partial class SecondOpinionJson : JsonSerializerContext
{
    private static readonly AnswerContexts<SecondOpinionJson> Contexts = new(options => new SecondOpinionJson(options));

    public static SecondOpinionJson In(Language language) => Contexts.In(language);
}
