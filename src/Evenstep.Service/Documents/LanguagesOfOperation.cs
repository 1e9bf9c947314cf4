using Evenstep.Service.Reading;
using Evenstep.Service.Wording;
using Microsoft.Net.Http.Headers;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Documents;

/// <summary>Says of an operation that answers in words how the language is chosen.</summary>
internal sealed class LanguagesOfOperation : IOperationFilter
{
    private const int MostCharacters = 1000;

    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        if (!context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<SpeaksLanguages>().Any())
        {
            return;
        }

        operation.Parameters ??= [];
        operation.Parameters.Add(new OpenApiParameter
        {
            Name = HeaderNames.AcceptLanguage,
            In = ParameterLocation.Header,
            Description = $"The language of the sentences: {Given.List(Language.All.Select(language => language.Tag))}; `Content-Language` says which it is.",
            Schema = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = MostCharacters },
        });
    }
}
