namespace Evenstep.Service.Http.Authentication;

/// <summary>Where keys are read from: the key file, before the rest of the configuration.</summary>
/// <param name="path">Of the file.</param>
/// <param name="rest">The rest of the configuration.</param>
internal sealed class KeySource(string path, IConfiguration rest)
{
    public string Path { get; } = path;

    /// <summary>What the file holds; null if there is none.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    public byte[]? Content()
    {
        try
        {
            return File.ReadAllBytes(Path);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    /// <summary>The keys of the file, if any, and of the rest.</summary>
    /// <exception cref="InvalidOperationException">Some of it is faulty; the message names every fault.</exception>
    public KeySet Read(byte[]? content)
    {
        try
        {
            var all = new ConfigurationBuilder().AddConfiguration(rest);
            var root = (content is null ? all : all.AddJsonStream(new MemoryStream(content))).Build();
            using var ended = root as IDisposable;
            return KeySettings.Read(root);
        }
        catch (Exception exception) when (exception is FormatException or InvalidDataException or System.Text.Json.JsonException)
        {
            throw new InvalidOperationException($"{Path} is not the JSON of keys: {exception.Message}", exception);
        }
    }
}
