using System.Globalization;
using System.Text.Json;

namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>Follows JSON Pointers (RFC 6901), written without a look at how the service writes them.</summary>
internal static class RequestPointer
{
    public static string[] Steps(string pointer) => pointer.Length == 0
        ? []
        : [.. pointer.Split('/').Skip(1).Select(step => step.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];

    public static JsonElement? Find(JsonElement value, string pointer) =>
        Steps(pointer).Aggregate((JsonElement?)value, (at, step) => at is { } found ? Next(found, step) : null);

    /// <summary>Whether the place is in the body, or is that of a field which an object of the body lacks.</summary>
    public static bool IsPlaceIn(JsonElement body, string pointer) =>
        Find(body, pointer) is not null
        || (pointer.Length > 0 && Find(body, pointer[..pointer.LastIndexOf('/')]) is { ValueKind: JsonValueKind.Object });

    private static JsonElement? Next(JsonElement value, string step) => value.ValueKind switch
    {
        JsonValueKind.Object => Field(value, step),
        JsonValueKind.Array => int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var i) && i < value.GetArrayLength() ? value[i] : null,
        _ => null,
    };

    /// <summary>Not by the framework's search, which half a surrogate pair in some other name breaks.</summary>
    private static JsonElement? Field(JsonElement value, string name)
    {
        foreach (var property in value.EnumerateObject())
        {
            if (NameOf(property) == name)
            {
                return property.Value;
            }
        }

        return null;
    }

    private static string? NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
