using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Catalogues;

/// <summary>Writes what became of a catalogue as JSON.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(StoredCatalogueAnswer))]
internal sealed partial class CatalogueJson : JsonSerializerContext
{
    private static readonly AnswerContexts<CatalogueJson> Contexts = new(options => new CatalogueJson(options));

    public static CatalogueJson In(Language language) => Contexts.In(language);
}
