using System.Globalization;
using Evenstep.Service.Errors;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Documents;

/// <summary>Says of each error that an operation may answer which kinds of it there are.</summary>
internal sealed class ErrorsOfOperation : IOperationFilter
{
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        foreach (var (status, response) in operation.Responses ?? [])
        {
            var kinds = ProblemKind.All.Where(kind => kind != ProblemKind.NotReady && kind.Status.ToString(CultureInfo.InvariantCulture) == status).ToList();
            if (kinds.Count > 0 && !IsHealth(context))
            {
                response.Description = string.Join(" ", kinds.Select(kind => $"{kind.Title} (`{kind.Type}`)."));
            }
        }
    }

    private static bool IsHealth(OperationFilterContext context) => context.ApiDescription.RelativePath?.StartsWith("health", StringComparison.Ordinal) is true;
}
