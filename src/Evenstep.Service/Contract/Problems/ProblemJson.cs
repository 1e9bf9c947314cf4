using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Contract.Problems;

/// <summary>Writes problem documents as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ProblemDocument))]
internal sealed partial class ProblemJson : JsonSerializerContext
{
    private static readonly AnswerContexts<ProblemJson> Contexts = new(options => new ProblemJson(options));

    public static ProblemJson In(Language language) => Contexts.In(language);
}
