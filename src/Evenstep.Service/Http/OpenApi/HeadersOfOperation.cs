using System.Globalization;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Negotiation;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>Says which headers an operation honours, and which its answers have.</summary>
internal sealed class HeadersOfOperation : IOperationFilter
{
    private const int MostCharacters = 1000;

    /// <summary>The answers to whoever was not let in.</summary>
    private static readonly int[] OfStrangers = [StatusCodes.Status401Unauthorized, StatusCodes.Status403Forbidden];

    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        IReadOnlyList<object> metadata = [.. context.ApiDescription.ActionDescriptor.EndpointMetadata];
        foreach (var header in metadata.OfType<RequestHeader>().Distinct())
        {
            operation.Parameters ??= [];
            operation.Parameters.Add(new OpenApiParameter { Name = header.Name, In = ParameterLocation.Header, Description = header.Meaning, Schema = Text() });
        }

        foreach (var (status, response) in operation.Responses ?? [])
        {
            var headers = Sent(metadata, int.Parse(status, CultureInfo.InvariantCulture)).DistinctBy(header => header.Name)
                .OrderBy(header => header.Name, StringComparer.Ordinal);
            ((OpenApiResponse)response).Headers = headers.ToDictionary(header => header.Name, IOpenApiHeader (header) => Describe(header, context.Document));
        }
    }

    private static IEnumerable<AnswerHeader> Sent(IReadOnlyList<object> metadata, int status)
    {
        IEnumerable<AnswerHeader> ofInterface = !metadata.OfType<RequestChecked>().Any() ? []
            : OfStrangers.Contains(status) ? [AnswerHeader.Vary]
            : [AnswerHeader.Vary, .. AnswerHeader.OfAdmitted];
        return AnswerHeader.OfAll
            .Concat(ofInterface)
            .Concat(status == StatusCodes.Status200OK ? OfferedFormats.Of(metadata).Forms.SelectMany(form => form.Headers) : [])
            .Concat(metadata.OfType<SendsHeaders>().Where(sends => sends.Status == status).SelectMany(sends => sends.Headers))
            .Concat(Refusals.Of(metadata).Where(kind => kind.Status == status).SelectMany(kind => AnswerHeader.OfErrors.AddRange(kind.Headers)));
    }

    /// <summary>A reference to the header, which is described once.</summary>
    private static OpenApiHeaderReference Describe(AnswerHeader header, OpenApiDocument document)
    {
        document.Components ??= new OpenApiComponents();
        document.Components.Headers ??= new Dictionary<string, IOpenApiHeader>();
        document.Components.Headers.TryAdd(header.Name, new OpenApiHeader
        {
            Description = header.Meaning,
            Schema = header.IsSeconds ? new OpenApiSchema { Type = JsonSchemaType.Integer, Format = "int32", Minimum = "1", Maximum = "86400" } : Text(),
        });
        return new OpenApiHeaderReference(header.Name, document);
    }

    private static OpenApiSchema Text() => new() { Type = JsonSchemaType.String, MaxLength = MostCharacters };
}
