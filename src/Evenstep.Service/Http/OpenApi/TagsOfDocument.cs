using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>Says what each group of operations is, and how keys are sent.</summary>
internal sealed class TagsOfDocument : IDocumentFilter
{
    private const string KeyScheme = "key";

    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        swaggerDoc.Tags = new HashSet<OpenApiTag>
        {
            new() { Name = "Assessments", Description = "What a kit does." },
            new() { Name = "Buying paths", Description = "In what order to buy." },
            new() { Name = "Catalogues", Description = "What a shop sells: stored once, named by id in every request." },
            new() { Name = "Choices", Description = "Several ways of weighing the same wishes." },
            new() { Name = "Health", Description = "How the service is." },
            new() { Name = "Product pages", Description = "What a shop shows on the page of what it sells." },
            new() { Name = "Recommendations", Description = "What to buy." },
            new() { Name = "Second opinions", Description = "What to think of a shopping list." },
            new() { Name = "Spending curves", Description = "How much to spend." },
            new() { Name = "Targets", Description = "What there is to look at." },
        };
        swaggerDoc.Servers = [new OpenApiServer { Url = "/", Description = "Wherever the service runs." }];

        // Either nothing, which an empty requirement says, or a key.
        swaggerDoc.Security =
            [new OpenApiSecurityRequirement(), new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(KeyScheme, swaggerDoc)] = [] }];
        swaggerDoc.Components ??= new OpenApiComponents();
        swaggerDoc.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
        {
            [KeyScheme] = new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description =
                    "A key, where the service has any: `Authorization: Bearer <key>`. One may `read` (ask for whatever changes nothing) or `write` (change " +
                    "catalogues), or both.",
            },
        };
    }
}
