using System.Text.Json;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Contract.Fields;

/// <summary>The words of JSON for the values of an enumeration: lower case with hyphens, unless the trade writes otherwise.</summary>
internal static class Words<T>
    where T : struct, Enum
{
    private static readonly Dictionary<T, string> ByValue = Enum.GetValues<T>().ToDictionary(value => value, Spelling.Of);
    private static readonly Dictionary<string, T> ByWord = ByValue.ToDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);

    public static IReadOnlyCollection<string> All => ByValue.Values;

    public static string Of(T value) => ByValue[value];

    public static T? Meant(string word) => ByWord.TryGetValue(word, out var value) ? value : null;
}

internal static class Spelling
{
    public static string Of<T>(T value)
        where T : struct, Enum => value switch
        {
            Barrel.Inch0965 => "0.965in",
            Barrel.Inch125 => "1.25in",
            Barrel.Inch2 => "2in",
            Excluded.ByRequest => "excluded-by-request",
            _ => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()),
        };
}
