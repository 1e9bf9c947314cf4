using System.Text.Json;
using System.Text.RegularExpressions;

namespace Evenstep.Service.Tests.House;

/// <summary>A block of code in a README: its language, and for JSON whether it is a request or an answer.</summary>
internal sealed record CodeBlock(string Language, string Role, string Text);

/// <summary>A request that a README tells the reader to send, with what it shows of it and of the answer.</summary>
internal sealed record Exchange(HttpMethod Method, string Path, string? Body)
{
    public string ContentType { get; init; } = "application/json";

    /// <summary>The headers it sends, but for the type of its body.</summary>
    public (string Name, string Value)[] Headers { get; init; } = [];

    /// <summary>Whether it changes what is stored, so that later ones rest on it.</summary>
    public bool IsChange => Method != HttpMethod.Post && Method != HttpMethod.Get;

    public string? ShownBody { get; init; }

    public string? ShownAnswer { get; init; }
}

/// <summary>A row of a table of fields: what is said of one field, or of several alike.</summary>
internal sealed record FieldRow(string[] Fields, string Default, string Bounds);

/// <summary>The README and what it sends its readers to, taken apart.</summary>
internal static partial class Readme
{
    private const string FieldTableEnding = "| default | bounds |";

    /// <summary>The README itself.</summary>
    public const string First = "README.md";

    /// <summary>All of them, by their paths from the root.</summary>
    public static IReadOnlyList<(string Path, string Text)> All { get; } =
    [
        .. new[] { First, "openapi/README.md", "docker/README.md", "src/Evenstep.Planning/README.md" }
            .Select(path => (path, File.ReadAllText(Path.Combine(Repository.Root, path)))),
    ];

    /// <summary>What they say together.</summary>
    public static string Text { get; } = string.Join("\n", All.Select(one => one.Text));

    public static IReadOnlyList<CodeBlock> Blocks { get; } =
    [
        .. Fence().Matches(Text).Select(match => new CodeBlock(
            match.Groups["language"].Value, match.Groups["role"].Value, match.Groups["text"].Value)),
    ];

    /// <summary>What it tells the reader to run.</summary>
    public static IEnumerable<string> Commands => Blocks.Where(block => block.Language == "sh").Select(block => block.Text.Trim());

    /// <summary>Each request with the JSON blocks that follow it.</summary>
    public static IReadOnlyList<Exchange> Exchanges { get; } = [.. ReadExchanges()];

    public static IReadOnlyList<FieldRow> FieldRows { get; } = [.. ReadFieldRows()];

    private static List<Exchange> ReadExchanges()
    {
        List<Exchange> exchanges = [];
        foreach (var block in Blocks)
        {
            if (block.Language == "sh" && Curl().Match(block.Text) is { Success: true } curl)
            {
                exchanges.Add(ExchangeOf(curl.Groups["path"].Value, block.Text));
            }
            else if (block.Language is "json" or "jsonl")
            {
                exchanges[^1] = block.Role == "request" ? exchanges[^1] with { ShownBody = block.Text } : exchanges[^1] with { ShownAnswer = block.Text };
            }
        }

        return exchanges;
    }

    private static Exchange ExchangeOf(string path, string command)
    {
        var body = Data().Match(command) is { Success: true } data ? BodyOf(data) : null;
        var method = Method().Match(command) is { Success: true } named ? new HttpMethod(named.Groups["method"].Value)
            : body is null ? HttpMethod.Get
            : HttpMethod.Post;
        var headers = Header().Matches(command).Select(match => (Name: match.Groups["name"].Value, match.Groups["value"].Value))
            .ToLookup(header => header.Name == "Content-Type");
        var exchange = new Exchange(method, path, body) { Headers = [.. headers[false]] };
        return headers[true].Any() ? exchange with { ContentType = headers[true].Single().Value } : exchange;
    }

    private static string BodyOf(Match data) => data.Groups["file"] is { Success: true } file
        ? File.ReadAllText(Path.Combine(Repository.Root, file.Value))
        : data.Groups["body"].Value;

    private static IEnumerable<FieldRow> ReadFieldRows()
    {
        var inTable = false;
        foreach (var line in Text.Split('\n'))
        {
            inTable = line.EndsWith(FieldTableEnding, StringComparison.Ordinal) || (inTable && line.StartsWith('|'));
            if (inTable && line.StartsWith("| `", StringComparison.Ordinal))
            {
                var cells = line.Split('|', StringSplitOptions.TrimEntries)[1..^1];
                yield return new FieldRow([.. Code().Matches(cells[0]).Select(match => match.Groups["code"].Value)], cells[2], cells[3]);
            }
        }
    }

    [GeneratedRegex(@"^```(?<language>\w+)(?: (?<role>\w+))?\n(?<text>.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence();

    [GeneratedRegex(@"^curl .*?http://localhost:5080(?<path>/[^\s']+)", RegexOptions.Singleline)]
    private static partial Regex Curl();

    [GeneratedRegex(@"\s-X (?<method>[A-Z]+)")]
    private static partial Regex Method();

    [GeneratedRegex(@"\s-H '(?<name>[\w-]+): (?<value>[^']*)'")]
    private static partial Regex Header();

    [GeneratedRegex(@"\s(?:-d|--data-binary) (?:@(?<file>\S+)|'(?<body>[^']*)')")]
    private static partial Regex Data();

    [GeneratedRegex("`(?<code>[^`]+)`")]
    private static partial Regex Code();
}

/// <summary>Compares JSON as the README shows it with the whole, where <c>…</c> stands for what is left out.</summary>
internal static class Elision
{
    private const string LeftOut = "…";

    /// <summary>The one value of an answer that is not the same each time.</summary>
    private const string Changing = "/solver/milliseconds";

    public static IEnumerable<string> Differences(JsonElement shown, JsonElement whole, string place = "") => shown.ValueKind switch
    {
        _ when shown.ValueKind != whole.ValueKind => [$"{place}: {shown.ValueKind} is shown, {whole.ValueKind} it is"],
        JsonValueKind.Object => OfObjects(shown, whole, place),
        JsonValueKind.Array => OfLists([.. shown.EnumerateArray()], [.. whole.EnumerateArray()], place),
        JsonValueKind.String => shown.GetString() == whole.GetString() ? [] : [$"{place}: {shown} is shown, {whole} it is"],
        _ => place == Changing || shown.GetRawText() == whole.GetRawText() ? [] : [$"{place}: {shown.GetRawText()} is shown, {whole.GetRawText()} it is"],
    };

    private static IEnumerable<string> OfObjects(JsonElement shown, JsonElement whole, string place)
    {
        var names = shown.EnumerateObject().Select(property => property.Name).ToHashSet();
        if (!names.Remove(LeftOut))
        {
            foreach (var missing in whole.EnumerateObject().Where(property => !names.Contains(property.Name)))
            {
                yield return $"{place}/{missing.Name} is not shown, and not marked as left out";
            }
        }

        foreach (var name in names)
        {
            var differences = whole.TryGetProperty(name, out var value)
                ? Differences(shown.GetProperty(name), value, $"{place}/{name}")
                : [$"{place}/{name} is shown, but there is none"];
            foreach (var difference in differences)
            {
                yield return difference;
            }
        }
    }

    private static IEnumerable<string> OfLists(JsonElement[] shown, JsonElement[] whole, string place)
    {
        var gap = Array.FindIndex(shown, one => one.ValueKind == JsonValueKind.String && one.GetString() == LeftOut);
        var (before, after) = gap < 0 ? (shown, []) : (shown[..gap], shown[(gap + 1)..]);
        var leftOut = whole.Length - before.Length - after.Length;
        if (leftOut < 0 || (gap < 0 && leftOut > 0))
        {
            return [$"{place}: {before.Length + after.Length} entries are shown, {whole.Length} there are"];
        }

        return before.Concat(after).Zip(whole.Take(before.Length).Concat(whole.TakeLast(after.Length)))
            .SelectMany((pair, i) => Differences(pair.First, pair.Second, $"{place}/{i}"));
    }
}
