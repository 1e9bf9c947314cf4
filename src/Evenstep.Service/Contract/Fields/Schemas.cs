using System.Globalization;
using Evenstep.Planning.Optics;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>Schemas that more than one shape needs.</summary>
internal static class Schemas
{
    public static OpenApiSchema Number(Bounds bounds) => new()
    {
        Type = JsonSchemaType.Number,
        Format = "double",
        Minimum = bounds.Least.ToString(CultureInfo.InvariantCulture),
        Maximum = bounds.Most.ToString(CultureInfo.InvariantCulture),
    };

    public static OpenApiSchema Whole(int least, int most) => new()
    {
        Type = JsonSchemaType.Integer,
        Format = "int32",
        Minimum = least.ToString(CultureInfo.InvariantCulture),
        Maximum = most.ToString(CultureInfo.InvariantCulture),
    };

    public static OpenApiSchema OneOfWords(IEnumerable<string> words) => new()
    {
        Type = JsonSchemaType.String,
        Enum = [.. words],
    };
}
