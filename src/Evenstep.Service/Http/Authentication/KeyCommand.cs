using System.Text.Json;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Http.Authentication;

/// <summary>The service's own program, looking after keys in place of running the service.</summary>
internal static class KeyCommand
{
    /// <summary>The word on the command line that calls it.</summary>
    public const string Word = "key";

    private const int Done = 0;
    private const int Failed = 1;
    private const int AskedWrongly = 2;

    private const string Usage =
        """
        key new --owner shop [--scopes read,write] [--rate 600] [--origins https://shop.example]
        key list
        key revoke NAME

          --owner    whose catalogues it sees and changes: lower-case letters, digits and hyphens
          --scopes   read (the default), write, or both, separated by commas
          --rate     requests a minute; without it there is no limit
          --origins  for a key that pages in browsers use: their origins, separated by commas
          NAME       as `key list` shows it, or the first 8 digits or more of the key's SHA-256
          --Evenstep:DataFolder  the folder of data, if it is not ./data
        """;

    /// <summary>0 if that went well, 1 if the file of keys stands in the way, 2 if it was asked for wrongly.</summary>
    /// <param name="args">What follows `key`.</param>
    /// <param name="clock">Says when a key is made.</param>
    /// <param name="words">Takes the words.</param>
    public static int Run(string[] args, TimeProvider clock, TextWriter words)
    {
        try
        {
            return args switch
            {
                ["new", .. var rest] => New(rest, clock, words),
                ["list", .. var rest] => List(rest, words),
                ["revoke", .. var rest] => Revoke(rest, words),
                [var odd, ..] => Refuse([$"{ErrorText.Quoted(odd)} is nothing that can be done with keys: new, list or revoke."], words),
                [] => Refuse(["Say what to do with keys: new, list or revoke."], words),
            };
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException or IOException or UnauthorizedAccessException)
        {
            words.WriteLine($"Nothing was changed. {exception.Message}");
            return Failed;
        }
    }

    private static int New(string[] args, TimeProvider clock, TextWriter words)
    {
        var asked = new KeyArguments(args, NewKey.Arguments);
        var key = NewKey.Of(asked, clock);
        List<string> faults = [.. asked.Faults(words: 0), .. key.Faults()];
        if (faults.Count > 0)
        {
            return Refuse(faults, words);
        }

        KeyFile.Add(asked.Path, key.Name, key.Entry);
        words.WriteLine(
            $"""
            The key, which is shown this once:

              {key.Text}

            It is called {key.Name} in {asked.Path}, where only its hash stands. A service that runs
            there knows it within a second, and asks everybody for a key from then on.
            """);
        return Done;
    }

    private static int List(string[] args, TextWriter words)
    {
        var asked = new KeyArguments(args, []);
        if (asked.Faults(words: 0).ToList() is { Count: > 0 } faults)
        {
            return Refuse(faults, words);
        }

        KeyList.Write(asked.Path, KeyFile.Keys(asked.Path), words);
        return Done;
    }

    private static int Revoke(string[] args, TextWriter words)
    {
        var asked = new KeyArguments(args, []);
        if (asked.Faults(words: 1).ToList() is { Count: > 0 } faults)
        {
            return Refuse(faults, words);
        }

        var keys = KeyFile.Keys(asked.Path);
        var meant = keys.Where(key => key.IsCalled(asked.Words[0])).ToList();
        if (meant is not [var key])
        {
            words.WriteLine($"{(meant.Count == 0 ? "No key is" : "More than one key is")} called {ErrorText.Quoted(asked.Words[0])}. Nothing was changed.");
            KeyList.Write(asked.Path, keys, words);
            return AskedWrongly;
        }

        KeyFile.Remove(asked.Path, key.Name);
        words.WriteLine($"{key.Name} is no key any more. A service that runs in {Path.GetDirectoryName(asked.Path)} refuses it within a second.");
        return Done;
    }

    private static int Refuse(IEnumerable<string> faults, TextWriter words)
    {
        words.WriteLine(string.Join(Environment.NewLine, [.. faults, "", Usage]));
        return AskedWrongly;
    }
}
