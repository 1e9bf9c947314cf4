using System.Text.Json;

namespace Evenstep.Service.Tests.Answers;

/// <summary>
/// Reads answers as a client does that trusts the contract: no field may be missing, be null against its type, come twice or be
/// unknown. The types are the tests' own, so that the service is never compared with itself.
/// </summary>
internal static class Reading
{
    private static readonly JsonSerializerOptions Strict = new(JsonSerializerOptions.Strict) { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    public static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, Strict)!;

    /// <summary>The text of what was read: equal for equal parts of answers, prices with all their decimals.</summary>
    public static string Text<T>(T part) => JsonSerializer.Serialize(part, Strict);
}
