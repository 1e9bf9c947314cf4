using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Http.Authentication;

/// <summary>What stands on the command line after what to do with keys.</summary>
internal sealed class KeyArguments
{
    private readonly string[] options;
    private readonly string[] known;
    private readonly List<KeyValuePair<string, string?>> given;
    private readonly IConfiguration asked;

    /// <param name="args">Words, and then options that begin with hyphens.</param>
    /// <param name="known">The options that there are, beside the folder of data.</param>
    public KeyArguments(string[] args, string[] known)
    {
        this.known = [.. known, StorageFolder.Key];
        Words = [.. args.TakeWhile(arg => !arg.StartsWith('-'))];
        options = args[Words.Length..];
        asked = new ConfigurationBuilder().AddCommandLine(options).Build();
        given = [.. asked.AsEnumerable().Where(pair => pair.Value is not null)];
        Path = KeyFile.PathOf(new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(options).Build());
    }

    /// <summary>What is said before any option.</summary>
    public string[] Words { get; }

    /// <summary>Of the file of keys.</summary>
    public string Path { get; }

    /// <summary>The value of an option; null if it is not given.</summary>
    public string? this[string option] => asked[option];

    /// <summary>What is not as it should be, in sentences.</summary>
    /// <param name="words">How many words there should be.</param>
    public IEnumerable<string> Faults(int words)
    {
        foreach (var (odd, _) in given.Where(pair => !known.Contains(pair.Key, StringComparer.OrdinalIgnoreCase)))
        {
            var suggestion = NearestName.To(odd, known) is { } nearest ? $" Did you mean --{nearest}?" : "";
            yield return $"--{odd} is not known.{suggestion}";
        }

        // The parser passes over what has no value, or is the value of nothing.
        if (options.Length != (2 * given.Count) - options.Count(arg => arg.Contains('=', StringComparison.Ordinal)))
        {
            yield return "Every argument is given once, with its value after it.";
        }

        if (Words.Length != words)
        {
            yield return words == 0
                ? $"{ErrorText.Quoted(Words[0])} is one word too many. Every argument is given once, with its value after it."
                : "Say which key, by one name.";
        }
    }
}
