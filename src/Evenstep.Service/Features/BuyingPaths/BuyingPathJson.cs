using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.BuyingPaths;

/// <summary>Writes buying paths as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(BuyingPathAnswer))]
internal sealed partial class BuyingPathJson : JsonSerializerContext
{
    private static readonly AnswerContexts<BuyingPathJson> Contexts = new(options => new BuyingPathJson(options));

    public static BuyingPathJson In(Language language) => Contexts.In(language);
}
