using Evenstep.Service.Contract.Languages;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>The OpenAPI document and the page to try it on.</summary>
internal static class DocumentSetup
{
    public const string Version = "v1";

    private const string Route = $"/openapi/{Version}.json";
    private const string ContentType = "application/json;charset=utf-8";

    private const string PageRoute = "/swagger";

    /// <summary>
    /// Everything comes from here, and nobody puts the page into theirs. Its icons are pictures within its style; the one
    /// style element that its script adds is let in by its hash, which another version of the page may change: a check with a
    /// browser tells.
    /// </summary>
    private const string PagePolicy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'sha256-RL3ie0nH+Lzz2YNqQN83mnU0J1ot4QL7b99vMdIX99w='; "
        + "img-src 'self' data:; connect-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

    /// <summary>It may be kept, but another version of the service has another.</summary>
    private const string AskEachTime = "no-cache";

    public static void AddDocument(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.AddSingleton<ServedDocument>();
        services.AddSingleton<ISerializerDataContractResolver>(new JsonSerializerDataContractResolver(AnswerJson.OptionsIn(Language.English)));
        services.AddSwaggerGen(document =>
        {
            document.SwaggerDoc(Version, DocumentText.Info);

            // HEAD goes with every GET, and needs no saying.
            document.DocInclusionPredicate((_, operation) => !HttpMethods.IsHead(operation.HttpMethod!));
            document.MapType<SaidValues>(() => new OpenApiSchema { Type = JsonSchemaType.Object });
            document.MapType<Sentence>(() => new OpenApiSchema { Type = JsonSchemaType.String });
            document.IncludeXmlComments(DocComments("Evenstep.Service"), includeControllerXmlComments: true);
            document.IncludeXmlComments(DocComments("Evenstep.Planning"));
            document.OperationFilter<BodyOfOperation>();
            document.OperationFilter<QueryOfOperation>();
            document.OperationFilter<ErrorsOfOperation>();
            document.OperationFilter<PictureOfOperation>();
            document.OperationFilter<HeadersOfOperation>();
            document.SchemaFilter<AnswerSchemas>();
            document.DocumentFilter<TagsOfDocument>();
        });
    }

    /// <summary>Serves the document.</summary>
    public static void MapDocument(this IEndpointRouteBuilder routes) => routes.MapGet(Route, GetDocumentAsync).ExcludeFromDescription();

    /// <summary>Serves the page to try it on.</summary>
    public static void UseSwaggerPage(this WebApplication app)
    {
        app.UseWhen(context => context.Request.Path.StartsWithSegments(PageRoute), page => page.Use((context, next) =>
        {
            context.Response.Headers.ContentSecurityPolicy = PagePolicy;
            context.Response.Headers["Referrer-Policy"] = "no-referrer";
            return next(context);
        }));
        app.UseSwaggerUI(page =>
        {
            page.DocumentTitle = "Evenstep";
            page.SwaggerEndpoint(Route, "Evenstep");
            page.DefaultModelsExpandDepth(-1);
            page.EnableValidator(null);
        });
    }

    private static async Task<FileContentHttpResult> GetDocumentAsync(ServedDocument served, HttpResponse response)
    {
        var (text, tag) = await served.GetAsync();
        response.Headers.CacheControl = AskEachTime;
        return TypedResults.Bytes(text, ContentType, entityTag: EntityTagHeaderValue.Parse(tag));
    }

    private static string DocComments(string assembly) => Path.Combine(AppContext.BaseDirectory, $"{assembly}.xml");
}
