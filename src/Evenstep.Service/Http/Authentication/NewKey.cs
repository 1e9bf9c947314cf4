using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;

namespace Evenstep.Service.Http.Authentication;

/// <summary>A key that is being made.</summary>
/// <param name="Text">The key itself, which is kept nowhere.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Entry">What the file is to say of it.</param>
internal sealed record NewKey(string Text, string Name, JsonObject Entry)
{
    /// <summary>So that whoever finds a key, and programs that look for lost ones, can tell what it is.</summary>
    private const string Beginning = "evenstep_";
    private const int KeyBytes = 32;
    private const int NameDigits = 8;

    private static readonly (string Argument, string Field)[] Fields =
        [("owner", KeySettings.Owner), ("scopes", KeySettings.Scopes), ("rate", KeySettings.Rate), ("origins", KeySettings.Origins)];

    /// <summary>The arguments that say what it is to be.</summary>
    public static string[] Arguments => [.. Fields.Select(one => one.Argument)];

    public static NewKey Of(KeyArguments asked, TimeProvider clock)
    {
        var text = Beginning + Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(KeyBytes));
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
        var entry = new JsonObject { [KeySettings.Hash] = hash };
        foreach (var (argument, field) in Fields.Where(one => asked[one.Argument] is not null))
        {
            entry[field] = asked[argument];
        }

        entry[KeySettings.Made] = clock.GetUtcNow().ToString(KeySettings.TimeFormat, CultureInfo.InvariantCulture);
        return new NewKey(text, $"key-{hash[..NameDigits]}", entry);
    }

    /// <summary>What was asked for wrongly, by argument.</summary>
    public List<string> Faults()
    {
        var path = ConfigurationPath.Combine(KeySettings.Section, Name);
        var entry = new ConfigurationBuilder().AddInMemoryCollection(
            Entry.Select(field => KeyValuePair.Create(ConfigurationPath.Combine(path, field.Key), (string?)field.Value))).Build();
        List<string> faults = [];
        using var read = KeySettings.Read(entry.GetSection(path), faults);
        return [.. faults.Select(fault => Arguments.Aggregate(
            fault.Replace($"{path}:", "--", StringComparison.Ordinal),
            (words, argument) => words.Replace($"--{argument}", $"--{argument}", StringComparison.OrdinalIgnoreCase)))];
    }
}
