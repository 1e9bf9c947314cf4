using System.Collections.Concurrent;
using System.Text.Json;

namespace Evenstep.Service.Contract.Fields;

/// <summary>Names of fields in JSON: those of the properties that declare them, in camel case.</summary>
internal static class FieldName
{
    private static readonly ConcurrentDictionary<string, string> Known = new(StringComparer.Ordinal);

    public static string Of(string property) => Known.GetOrAdd(property, JsonNamingPolicy.CamelCase.ConvertName);

    /// <summary>Points at the field that a property declares, in the object here.</summary>
    public static RequestPointer To(this RequestPointer pointer, string property) => pointer.At(Of(property));
}
