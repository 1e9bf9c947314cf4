using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Reading;

namespace Evenstep.Service.Keys;

/// <summary>The service's own program, making a key in place of running the service.</summary>
internal static class KeyCommand
{
    private const string Usage =
        """
        key new --owner shop [--scopes read,write] [--rate 600] [--origins https://shop.example]

          --owner    whose catalogues it sees and changes: lower-case letters, digits and hyphens
          --scopes   read (the default), write, or both, separated by commas
          --rate     requests a minute; without it there is no limit
          --origins  for a key that pages in browsers use: their origins, separated by commas
          --Evenstep:DataFolder  the folder of data, if it is not ./data
        """;

    /// <summary>So that whoever finds a key, and programs that look for lost ones, can tell what it is.</summary>
    private const string KeyBeginning = "evenstep_";
    private const int KeyBytes = 32;
    private const int NameBytes = 4;

    private static readonly (string Argument, string Field)[] Fields =
        [("owner", KeySettings.Owner), ("scopes", KeySettings.Scopes), ("rate", KeySettings.Rate), ("origins", KeySettings.Origins)];

    /// <summary>Makes a key, shows it once, and notes its hash. 0 if that went well, 2 if it was asked for wrongly.</summary>
    /// <param name="args">What follows `key new`.</param>
    /// <param name="words">Takes the words.</param>
    public static int Run(string[] args, TextWriter words)
    {
        var asked = new ConfigurationBuilder().AddCommandLine(args).Build();
        var text = KeyBeginning + Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(KeyBytes));
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
        var name = $"key-{hash[..(2 * NameBytes)]}";
        var key = EntryOf(asked, hash);
        List<string> faults = [.. UnknownIn(args, asked), .. FaultsOf(name, key)];
        if (faults.Count > 0)
        {
            words.WriteLine(string.Join(Environment.NewLine, [.. faults, "", Usage]));
            return 2;
        }

        var path = KeyFile.PathOf(new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(args).Build());
        KeyFile.Add(path, name, key);
        words.WriteLine(
            $"""
            The key, which is shown this once:

              {text}

            It is called {name} in {path}, where only its hash stands. The service knows it from its next start on.
            """);
        return 0;
    }

    private static JsonObject EntryOf(IConfiguration asked, string hash)
    {
        var key = new JsonObject { [KeySettings.Hash] = hash };
        foreach (var (argument, field) in Fields.Where(one => asked[one.Argument] is not null))
        {
            key[field] = asked[argument];
        }

        return key;
    }

    private static IEnumerable<string> UnknownIn(string[] args, IConfiguration asked)
    {
        string[] known = [.. Fields.Select(one => one.Argument), StorageSetup.FolderKey];
        var given = asked.AsEnumerable().Where(pair => pair.Value is not null).ToList();
        foreach (var (odd, _) in given.Where(pair => !known.Contains(pair.Key, StringComparer.OrdinalIgnoreCase)))
        {
            var suggestion = NearestName.To(odd, known) is { } nearest ? $" Did you mean --{nearest}?" : "";
            yield return $"--{odd} is not known.{suggestion}";
        }

        // The parser passes over what has no value, or is the value of nothing.
        if (args.Length != 2 * given.Count - args.Count(arg => arg.Contains('=', StringComparison.Ordinal)))
        {
            yield return "Every argument is given once, with its value after it.";
        }
    }

    private static List<string> FaultsOf(string name, JsonObject key)
    {
        var path = ConfigurationPath.Combine(KeySettings.Section, name);
        var entry = new ConfigurationBuilder().AddInMemoryCollection(
            key.Select(field => KeyValuePair.Create(ConfigurationPath.Combine(path, field.Key), (string?)field.Value))).Build();
        List<string> faults = [];
        using var read = KeySettings.Read(entry.GetSection(path), faults);
        return [.. faults.Select(fault => fault.Replace($"{path}:", "--", StringComparison.Ordinal))];
    }
}
