using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Answering.Spending;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.SpendingCurves;

/// <summary>Writes spending curves as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(SpendingCurveAnswer))]
internal sealed partial class SpendingCurveJson : JsonSerializerContext
{
    private static readonly AnswerContexts<SpendingCurveJson> Contexts = new(options => new SpendingCurveJson(options));

    public static SpendingCurveJson In(Language language) => Contexts.In(language);
}
