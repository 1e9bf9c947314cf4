using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.Targets;

/// <summary>Writes targets as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(KnownTargetsAnswer))]
internal sealed partial class TargetJson : JsonSerializerContext
{
    private static readonly AnswerContexts<TargetJson> Contexts = new(options => new TargetJson(options));

    public static TargetJson In(Language language) => Contexts.In(language);
}
