using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>Writes what an item does as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(MatchAnswer))]
internal sealed partial class MatchJson : JsonSerializerContext
{
    private static readonly AnswerContexts<MatchJson> Contexts = new(options => new MatchJson(options));

    public static MatchJson In(Language language) => Contexts.In(language);
}
