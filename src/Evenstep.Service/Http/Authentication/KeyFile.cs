using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Evenstep.Service.Http.Authentication;

/// <summary>The file in the folder of data in which the service's own command notes keys: a part of the configuration.</summary>
internal static class KeyFile
{
    private const string Name = "keys.json";

    /// <summary>Hashes are no secrets, but nobody else's business either.</summary>
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    public static string PathOf(IConfiguration configuration) => Path.Combine(StorageFolder.Of(configuration), Name);

    /// <summary>The keys of the file alone; none if there is no file.</summary>
    /// <exception cref="InvalidOperationException">The file is faulty; the message names every fault.</exception>
    public static ImmutableArray<ApiKey> Keys(string path)
    {
        var source = new KeySource(path, new ConfigurationBuilder().Build());
        return source.Read(source.Content()).Keys;
    }

    /// <summary>Adds a key to those that the file has. It is there whole or not at all.</summary>
    /// <exception cref="JsonException">The file is not what this class writes.</exception>
    public static void Add(string path, string name, JsonObject key) => Change(path, keys => keys.Add(name, key));

    /// <summary>Takes a key out of the file, likewise.</summary>
    /// <exception cref="JsonException">The file is not what this class writes.</exception>
    public static void Remove(string path, string name) => Change(path, keys => keys.Remove(name));

    private static void Change(string path, Action<JsonObject> change)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var root = File.Exists(path) ? JsonNode.Parse(File.ReadAllText(path)) as JsonObject ?? throw new JsonException($"{path} holds no JSON object.") : [];
        change(KeysIn(root));
        Put(path, root.ToJsonString(Indented));
    }

    private static void Put(string path, string content)
    {
        var next = $"{path}.next";
        File.WriteAllText(next, content);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(next, OwnerOnly);
        }

        File.Move(next, path, overwrite: true);
    }

    private static JsonObject KeysIn(JsonObject root) =>
        KeySettings.Section.Split(':').Aggregate(root, (node, part) => (JsonObject)(node[part] ??= new JsonObject()));
}
