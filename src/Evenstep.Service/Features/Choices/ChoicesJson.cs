using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.Choices;

/// <summary>Writes choices as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ChoicesAnswer))]
internal sealed partial class ChoicesJson : JsonSerializerContext
{
    private static readonly AnswerContexts<ChoicesJson> Contexts = new(options => new ChoicesJson(options));

    public static ChoicesJson In(Language language) => Contexts.In(language);
}
