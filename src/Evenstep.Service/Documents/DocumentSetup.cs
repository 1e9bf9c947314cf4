using System.Text.Json.Nodes;
using Evenstep.Service.Wording;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Documents;

/// <summary>The OpenAPI document and the page to try it on.</summary>
internal static class DocumentSetup
{
    private const string Version = "v1";

    public static void AddDocument(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.AddSingleton<ISerializerDataContractResolver>(new JsonSerializerDataContractResolver(AnswerJson.Shared.Options));
        services.AddSwaggerGen(document =>
        {
            document.SwaggerDoc(Version, DocumentText.Info);
            document.MapType<JsonObject>(() => new OpenApiSchema { Type = JsonSchemaType.Object });
            document.MapType<Sentence>(() => new OpenApiSchema { Type = JsonSchemaType.String });
            document.IncludeXmlComments(DocComments("Evenstep.Service"), includeControllerXmlComments: true);
            document.IncludeXmlComments(DocComments("Evenstep.Planning"));
            document.OperationFilter<BodyOfOperation>();
            document.OperationFilter<QueryOfOperation>();
            document.OperationFilter<ErrorsOfOperation>();
            document.OperationFilter<PictureOfOperation>();
            document.OperationFilter<LanguagesOfOperation>();
            document.SchemaFilter<AnswerSchemas>();
            document.DocumentFilter<TagsOfDocument>();
        });
    }

    public static void UseDocument(this WebApplication app)
    {
        app.UseSwagger(document =>
        {
            document.RouteTemplate = "openapi/{documentName}.json";
            document.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        });
        app.UseSwaggerUI(page =>
        {
            page.DocumentTitle = "Evenstep";
            page.SwaggerEndpoint($"/openapi/{Version}.json", "Evenstep");
            page.DefaultModelsExpandDepth(-1);
        });
    }

    private static string DocComments(string assembly) => Path.Combine(AppContext.BaseDirectory, $"{assembly}.xml");
}
