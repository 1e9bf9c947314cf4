using System.Collections.Immutable;
using System.Globalization;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Http.Authentication;

/// <summary>Tells what keys there are, a line each, and never a key itself.</summary>
internal static class KeyList
{
    public static void Write(string path, ImmutableArray<ApiKey> keys, TextWriter words)
    {
        words.WriteLine(keys.IsEmpty ? $"There are no keys in {path}." : $"Keys in {path}:");
        foreach (var key in keys)
        {
            var scopes = ErrorText.List(key.Scopes.Select(Words<Scope>.Of));
            words.WriteLine($"  {key.Name}: owner {key.Owner.Name}; may {scopes}; {RateOf(key)}; {PlaceOf(key)}; {MadeOf(key)}");
        }
    }

    private static string RateOf(ApiKey key) =>
        key.Rate is { } rate ? string.Create(CultureInfo.InvariantCulture, $"{rate.PerMinute} requests a minute") : "as often as one likes";

    private static string PlaceOf(ApiKey key) => key.Origins.IsEmpty ? "for servers" : $"for pages of {string.Join(", ", key.Origins)}";

    private static string MadeOf(ApiKey key) =>
        key.Made is { } made ? string.Create(CultureInfo.InvariantCulture, $"made {made:yyyy-MM-dd HH:mm} UTC") : "made at a time not noted";
}
