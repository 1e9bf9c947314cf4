using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Http.Authentication;

/// <summary>Reads keys from the configuration, or says all that is wrong with them.</summary>
internal static partial class KeySettings
{
    public const string Section = "Evenstep:Keys";
    public const string Hash = "Sha256";
    public const string Owner = "Owner";
    public const string Scopes = "Scopes";
    public const string Rate = "Rate";
    public const string Origins = "Origins";

    public const string Made = "Made";
    public const string TimeFormat = "yyyy-MM-ddTHH:mm:ssZ";

    private static readonly string[] Known = [Hash, Owner, Scopes, Rate, Origins, Made];

    /// <exception cref="InvalidOperationException">Some keys are faulty; the message names every fault.</exception>
    public static KeySet Read(IConfiguration configuration)
    {
        List<string> faults = [];
        ImmutableArray<ApiKey> keys = [.. configuration.GetSection(Section).GetChildren().Select(section => Read(section, faults))];
        faults.AddRange(keys.GroupBy(key => Convert.ToHexString(key.Hash.AsSpan())).Where(same => same.Key.Length > 0 && same.Count() > 1)
            .Select(same => $"{string.Join(" and ", same.Select(key => $"{Section}:{key.Name}"))} are the same key; leave one of them out."));
        if (faults.Count == 0)
        {
            return new KeySet(keys);
        }

        foreach (var key in keys)
        {
            key.Dispose();
        }

        throw new InvalidOperationException(string.Join(' ', faults));
    }

    /// <summary>One key; whatever of it is faulty is left out and told.</summary>
    public static ApiKey Read(IConfigurationSection section, List<string> faults)
    {
        foreach (var odd in section.GetChildren().Where(child => !Known.Contains(child.Key, StringComparer.OrdinalIgnoreCase)))
        {
            faults.Add($"{odd.Path} is not known; a key has {ErrorText.List(Known)}.");
        }

        return new ApiKey
        {
            Name = section.Key,
            Hash = HashOf(section, faults),
            Owner = new Owner(OwnerOf(section, faults)),
            Scopes = ScopesOf(section, faults),
            Origins = OriginsOf(section, faults),
            Rate = RateOf(section, faults),
            Made = MadeOf(section, faults),
        };
    }

    private static ImmutableArray<byte> HashOf(IConfigurationSection section, List<string> faults)
    {
        if (section[Hash] is { } text && HexHash().IsMatch(text))
        {
            return [.. Convert.FromHexString(text)];
        }

        faults.Add(Fault(section, Hash, $"the SHA-256 of the key in {2 * SHA256.HashSizeInBytes} hexadecimal digits"));
        return [];
    }

    private static string OwnerOf(IConfigurationSection section, List<string> faults)
    {
        if (section[Owner] is { } owner && OwnerName().IsMatch(owner))
        {
            return owner;
        }

        faults.Add(Fault(section, Owner, "1 to 63 lower-case letters, digits and hyphens, a hyphen not first"));
        return "";
    }

    private static ImmutableArray<Scope> ScopesOf(IConfigurationSection section, List<string> faults)
    {
        var scopes = PartsOf(section[Scopes] ?? Words<Scope>.Of(Scope.Read)).Select(Words<Scope>.Meant).ToList();
        if (scopes.Count == 0 || scopes.Contains(null))
        {
            faults.Add(Fault(section, Scopes, $"any of {ErrorText.List(Words<Scope>.All)}, separated by commas"));
        }

        return [.. scopes.OfType<Scope>().Distinct()];
    }

    private static ImmutableArray<string> OriginsOf(IConfigurationSection section, List<string> faults)
    {
        ImmutableArray<string> origins = [.. PartsOf(section[Origins] ?? "")];
        if (!origins.All(IsOrigin))
        {
            faults.Add(Fault(section, Origins, "origins such as https://shop.example, without a path, separated by commas"));
        }

        return origins;
    }

    private static KeyRate? RateOf(IConfigurationSection section, List<string> faults)
    {
        if (section[Rate] is not { Length: > 0 } text)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var rate) && rate is >= 1 and <= KeyRate.MostPerMinute)
        {
            return new KeyRate(rate);
        }

        faults.Add(Fault(section, Rate, $"a whole number of requests a minute from 1 to {KeyRate.MostPerMinute}; without it there is no limit"));
        return null;
    }

    private static DateTimeOffset? MadeOf(IConfigurationSection section, List<string> faults)
    {
        if (section[Made] is not { Length: > 0 } text)
        {
            return null;
        }

        if (DateTimeOffset.TryParseExact(text, TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var made))
        {
            return made;
        }

        faults.Add(Fault(section, Made, "a time such as 2026-11-25T15:00:00Z"));
        return null;
    }

    private static string Fault(IConfigurationSection section, string field, string allowed) =>
        $"{section.Path}:{field} {(section[field] is { } given ? $"is {ErrorText.Quoted(given)}" : "is missing")}; it must be {allowed}.";

    private static string[] PartsOf(string list) => list.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries);

    private static bool IsOrigin(string text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" && uri.GetLeftPart(UriPartial.Authority) == text;

    [GeneratedRegex("^[0-9a-fA-F]{64}\\z")]
    private static partial Regex HexHash();

    [GeneratedRegex("^[a-z0-9][a-z0-9-]{0,62}\\z")]
    private static partial Regex OwnerName();
}
