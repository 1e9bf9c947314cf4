using System.Globalization;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>Says which errors an operation may answer.</summary>
internal sealed class ErrorsOfOperation : IOperationFilter
{
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        operation.Responses ??= [];
        foreach (var kinds in Refusals.Of([.. context.ApiDescription.ActionDescriptor.EndpointMetadata]).GroupBy(kind => kind.Status))
        {
            operation.Responses[kinds.Key.ToString(CultureInfo.InvariantCulture)] = new OpenApiResponse
            {
                Description = string.Join(" ", kinds.Select(kind => $"{kind.Title.In(Language.English)} (`{kind.Type}`).")),
                Content = new Dictionary<string, IOpenApiMediaType>
                {
                    [ProblemResult.ContentType] =
                        new OpenApiMediaType { Schema = context.SchemaGenerator.GenerateSchema(typeof(ProblemDocument), context.SchemaRepository) },
                },
            };
        }
    }
}
