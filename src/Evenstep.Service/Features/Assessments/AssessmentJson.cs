using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.Assessments;

/// <summary>Writes assessments as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(AssessmentAnswer))]
internal sealed partial class AssessmentJson : JsonSerializerContext
{
    private static readonly AnswerContexts<AssessmentJson> Contexts = new(options => new AssessmentJson(options));

    public static AssessmentJson In(Language language) => Contexts.In(language);
}
