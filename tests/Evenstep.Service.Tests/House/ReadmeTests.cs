using System.Text.Json;
using System.Text.RegularExpressions;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Tests.Features.Batches;

namespace Evenstep.Service.Tests.House;

/// <summary>What the README and those beside the code say is so.</summary>
public sealed partial class ReadmeTests(Service service) : IClassFixture<Service>
{
    /// <summary>Frames of sentences, which are no codes of their own.</summary>
    private static readonly string[] Frames =
        ["alone", "beside", "in-telescope", "no-candidate", "no-view", "not-bought", "power", "remedies", "remedy", "through", "together", "widest", "with"];

    /// <summary>Sentences by the ids of targets, which are no codes.</summary>
    private const string Designations = "designation";

    /// <summary>What pictures say goes with no codes.</summary>
    private const string Pictures = "picture";

    private const string MakesKey = "dotnet run -c Release --project src/Evenstep.Service -- key new ";

    private const int MostLines = 230;

    private static readonly string[] Roles = ["request", "answer"];

    public static TheoryData<string> Pages => [.. Readme.All.Select(one => one.Path), "DEVELOPERS.md"];

    /// <summary>By their order in the README and the others.</summary>
    public static TheoryData<int> Exchanges => [.. Enumerable.Range(0, Readme.Exchanges.Count)];

    [Theory]
    [MemberData(nameof(Exchanges))]
    public async Task Every_request_gets_the_answer_shown(int number)
    {
        var exchange = Readme.Exchanges[number];
        foreach (var earlier in Readme.Exchanges.Take(number).Where(earlier => earlier.IsChange))
        {
            await SendAsync(earlier);
        }

        var answer = await SendAsync(exchange);

        if (exchange.ShownAnswer is not { } text)
        {
            Assert.InRange(answer.Status, 200, 299);
            return;
        }

        if (exchange.ContentType == Batch.MediaType)
        {
            Assert.Empty(Elision.Differences(Lines(text), Lines(answer.Body)));
            return;
        }

        var shown = Parse(text);
        if (shown.TryGetProperty("status", out var status))
        {
            Assert.Equal(status.GetInt32(), answer.Status);
        }
        else
        {
            Assert.InRange(answer.Status, 200, 299);
        }

        Assert.Empty(Elision.Differences(shown, answer.Json));
    }

    [Fact]
    public void A_body_shown_is_the_body_sent()
    {
        var shown = Readme.Exchanges.Where(exchange => exchange.ShownBody is not null).ToList();

        Assert.NotEmpty(shown);
        Assert.All(shown, exchange => Assert.Empty(Elision.Differences(Parse(exchange.ShownBody!), Parse(exchange.Body!))));
    }

    [Fact]
    public void Every_block_of_JSON_says_what_it_is() =>
        Assert.All(Readme.Blocks.Where(block => block.Language.StartsWith("json", StringComparison.Ordinal)), block => Assert.Contains(block.Role, Roles));

    [Theory]
    [InlineData("""{ "a": 1, "…": "…" }""", """{ "a": 1, "b": 2 }""", true)]
    [InlineData("""{ "a": 1 }""", """{ "a": 1, "b": 2 }""", false)]
    [InlineData("""{ "a": 1, "c": 3, "…": "…" }""", """{ "a": 1, "b": 2 }""", false)]
    [InlineData("""[ 1, "…", 4 ]""", "[1, 2, 3, 4]", true)]
    [InlineData("""[ 1, "…" ]""", "[1]", true)]
    [InlineData("""[ 1, "…" ]""", "[]", false)]
    [InlineData("[ 1 ]", "[1, 2]", false)]
    [InlineData("1.50", "1.5", false)]
    [InlineData("\"a\"", "\"b\"", false)]
    public void What_is_left_out_must_be_marked(string shown, string whole, bool agrees) =>
        Assert.Equal(agrees, !Elision.Differences(Parse(shown), Parse(whole)).Any());

    [Fact]
    public void It_opens_with_the_job_in_one_paragraph_and_a_list_of_contents()
    {
        var opening = Readme.All[0].Text.Split("\n## ")[0].Trim().Split("\n\n");

        Assert.Equal(3, opening.Length);
        Assert.Equal("# Evenstep", opening[0]);
        Assert.All(opening[2].Split('\n'), line => Assert.StartsWith("- [", line, StringComparison.Ordinal));
    }

    [Fact]
    public void It_is_short() => Assert.InRange(Readme.All[0].Text.Count(letter => letter == '\n'), 100, MostLines);

    [Theory]
    [MemberData(nameof(Pages))]
    public void Its_contents_are_all_of_its_sections(string page)
    {
        var text = TextOf(page);

        Assert.Equal(Chapter().Matches(text).Select(match => match.Groups["title"].Value), Entry().Matches(text).Select(match => match.Groups["title"].Value));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Every_file_and_section_it_links_to_exists(string page)
    {
        var folder = Path.GetDirectoryName(Path.Combine(Repository.Root, page))!;
        var links = Link().Matches(TextOf(page)).Where(link => !link.Groups["path"].Value.Contains("://", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(links);
        Assert.All(links, link =>
        {
            var path = link.Groups["path"].Value is { Length: > 0 } other ? Path.Combine(folder, other) : Path.Combine(Repository.Root, page);
            Assert.True(Path.Exists(path), $"There is no {path}.");
            if (link.Groups["section"] is { Success: true } section)
            {
                Assert.Contains(section.Value, Section().Matches(File.ReadAllText(path)).Select(match => AnchorOf(match.Groups["title"].Value)));
            }
        });
    }

    [Fact]
    public void Every_file_that_is_named_exists() => Assert.All(
        OwnPath().Matches(Readme.Text).Select(match => match.Groups["path"].Value).Distinct(),
        path => Assert.True(Path.Exists(Path.Combine(Repository.Root, path)), $"There is no {path}."));

    [Fact]
    public void Every_command_is_one_that_runs()
    {
        var curls = Readme.Commands.Count(command => command.StartsWith("curl ", StringComparison.Ordinal));
        string[] others = [.. Readme.Commands.Where(command => !command.StartsWith("curl ", StringComparison.Ordinal))];

        Assert.Equal(Readme.Exchanges.Count, curls);
        Assert.Equal(
            ["dotnet run -c Release --project src/Evenstep.Service", "bash tests/run"],
            others.Where(other => !other.Contains(MakesKey, StringComparison.Ordinal)));
        Assert.All(others.Where(other => other.Contains(MakesKey, StringComparison.Ordinal)), AssertMakesKey);
        Assert.True(File.Exists(Path.Combine(Repository.Root, "src", "Evenstep.Service", "Evenstep.Service.csproj")));
        Assert.True(OperatingSystem.IsWindows() || File.GetUnixFileMode(Path.Combine(Repository.Root, "tests", "run")).HasFlag(UnixFileMode.UserExecute));
    }

    [Fact]
    public void Its_numbers_of_the_demo_catalogue_and_of_the_SDK_are_right()
    {
        var demo = CatalogueSnapshot.WithDemo().Find(CatalogueSnapshot.DemoId)!;
        var sdk = Parse(File.ReadAllText(Path.Combine(Repository.Root, "global.json"))).GetProperty("sdk").GetProperty("version").GetString()!;

        Assert.Contains($"{demo.Items.Count} items and {demo.Telescopes.Count} telescopes", Readme.Text, StringComparison.Ordinal);
        Assert.Contains($"the .NET {sdk.Split('.')[0]} SDK", Readme.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_code_is_named_here_or_in_the_document()
    {
        var document = Parse(File.ReadAllText(Repository.DocumentPath)).GetProperty("info").GetProperty("description").GetString();
        IEnumerable<string> codes =
        [
            .. Words<FaultCode>.All, .. Words<Excluded>.All, .. Reasons.Codes, .. ProblemKind.All.Select(kind => kind.Type),
            .. Language.English.Sentences.Keys.Select(key => key.Split('/')).Where(parts => parts[0] is not (Designations or Pictures or "problem" or "error"))
            .Select(parts => parts[1]).Except(Frames),
        ];

        Assert.All(codes.Distinct(), code => Assert.Contains($"`{code}`", Readme.Text + document, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_word_that_a_request_chooses_or_an_answer_uses_is_named()
    {
        IEnumerable<string> words =
        [
            .. Words<Outcome>.All, .. Words<Excluded>.All, .. Words<NotUsable>.All, .. Words<RangeEnd>.All, .. Words<ItemKind>.All,
            .. Words<Prefer>.All, .. Words<Interest>.All, .. Words<Barrel>.All, .. Words<EyepiecePurpose>.All,
        ];

        Assert.All(words, word => Assert.Contains($"`{word}`", Readme.Text, StringComparison.Ordinal));
    }

    private Task<Answer> SendAsync(Exchange exchange) =>
        service.SendAsync(exchange.Method, exchange.Path, exchange.Body, exchange.ContentType, exchange.Headers);

    private static void AssertMakesKey(string command)
    {
        using var data = new DataFolder();
        using var words = new StringWriter();
        var args = command.Split(MakesKey)[1].Split(' ', StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(0, KeyCommand.Run(["new", .. args, "--Evenstep:DataFolder", data.Path], TimeProvider.System, words));
    }

    /// <summary>The lines as one list.</summary>
    private static JsonElement Lines(string text) => Parse($"[{text.Trim().ReplaceLineEndings(",")}]");

    private static JsonElement Parse(string json) => JsonSerializer.Deserialize<JsonElement>(json);

    private static string TextOf(string page) => File.ReadAllText(Path.Combine(Repository.Root, page));

    /// <summary>As GitHub makes it of a title.</summary>
    private static string AnchorOf(string title) => NotOfAnchors().Replace(title.ToLowerInvariant(), "").Replace(' ', '-');

    [GeneratedRegex(@"[^\w\- ]")]
    private static partial Regex NotOfAnchors();

    [GeneratedRegex(@"^## (?<title>.+)$", RegexOptions.Multiline)]
    private static partial Regex Chapter();

    [GeneratedRegex(@"^##+ (?<title>.+)$", RegexOptions.Multiline)]
    private static partial Regex Section();

    [GeneratedRegex(@"^- \[(?<title>.+)\]\(#", RegexOptions.Multiline)]
    private static partial Regex Entry();

    [GeneratedRegex(@"\]\((?<path>[^)#\s]*)(?:#(?<section>[^)\s]+))?\)")]
    private static partial Regex Link();

    /// <summary>A path from the root of the repository; an address such as /openapi/v1.json is none.</summary>
    [GeneratedRegex(@"(?<![\w/.])(?<path>(?:openapi|src|tests)/[\w./-]*\w)")]
    private static partial Regex OwnPath();
}
