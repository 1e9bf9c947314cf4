using System.Text.Json;
using System.Text.RegularExpressions;
using Evenstep.Planning.Advice;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Contract.Languages;

/// <summary>Every key that the code names is in the files, and every key in the files is used by the code.</summary>
public sealed partial class KeyUseTests
{
    private static readonly string Source = Path.Combine(Repository.Root, "src");

    /// <summary>Texts by the identifiers of targets, which stand in a table of their own.</summary>
    private static readonly string[] ByTarget = ["target", "designation"];

    private static readonly string Code = TextOf(Source, "*.cs");

    private static readonly string Page = TextOf(Path.Combine(Source, "Evenstep.Service", "Pages"), "*.js");

    private static readonly string Elements = TextOf(Path.Combine(Source, "Evenstep.Service", "Elements"), "*.js");

    /// <summary>What stands in quotation marks in the code, and in it the words between slashes.</summary>
    private static readonly HashSet<string> Said =
        [.. Literal().Matches(Code).SelectMany(literal => literal.Groups["text"].Value.Split('/').Append(literal.Groups["text"].Value))];

    /// <summary>The words of the contract for the values of every enumeration.</summary>
    private static readonly HashSet<string> EnumerationWords =
        [
            .. new[] { typeof(Language).Assembly, typeof(Remark).Assembly }.SelectMany(assembly => assembly.GetTypes()).Where(type => type.IsEnum)
                .SelectMany(Enum.GetNames).Select(JsonNamingPolicy.KebabCaseLower.ConvertName)
        ];

    [Fact]
    public void Every_sentence_that_the_code_names_is_there()
    {
        string[] named = [.. NamedSentence().Matches(Code).Select(name => name.Groups["key"].Value)];

        Assert.NotEmpty(named);
        Assert.All(named, key => Assert.Contains(key, Language.English.Sentences.Keys));
    }

    [Fact]
    public void Every_sentence_is_used() => Assert.All(
        Language.English.Sentences.Keys.Where(key => !ByTarget.Contains(key.Split('/')[0])),
        key => Assert.True(Said.Contains(key) || key.Split('/').All(part => Said.Contains(part) || EnumerationWords.Contains(part)), key));

    [Fact]
    public void Everything_that_the_page_says_is_there()
    {
        string[] named = [.. SaidByPage().Matches(Page).Select(name => name.Groups["key"].Value)];
        string[] groups = [.. GroupSaidByPage().Matches(Page).Select(name => name.Groups["group"].Value)];

        Assert.All(named, key => Assert.True(PageKeys().Contains(key) || PageKeys().Any(known => known.StartsWith($"{key}.", StringComparison.Ordinal)), key));
        Assert.All(groups, group => Assert.Contains(PageKeys(), key => key.StartsWith($"{group}.", StringComparison.Ordinal)));
        Assert.True(named.Length > 100 && groups.Length > 10, $"{named.Length} keys, {groups.Length} groups");
    }

    [Fact]
    public void The_page_says_everything_that_is_there()
    {
        HashSet<string> groups = [.. GroupSaidByPage().Matches(Page).Select(name => name.Groups["group"].Value)];

        Assert.All(PageKeys(), key => Assert.True(Page.Contains($"\"{key}\"", StringComparison.Ordinal) || IsOneOf(key, groups), key));
    }

    [Fact]
    public void The_elements_say_everything_that_is_there_and_nothing_else()
    {
        string[] named =
        [
            .. SaidByElements().Matches(Elements).SelectMany(call => SingleQuoted().Matches(call.Groups["keys"].Value)).Select(key => key.Groups["text"].Value)
        ];

        Assert.Equal(
            Language.English.File.TextsOf("elements").Select(text => text.Key).Order(StringComparer.Ordinal), named.Distinct().Order(StringComparer.Ordinal));
    }

    /// <summary>A key whose end is worked out: then that must be a word of the page or of the contract.</summary>
    private static bool IsOneOf(string key, HashSet<string> groups)
    {
        var end = key.LastIndexOf('.');
        var word = key[(end + 1)..];
        return end > 0 && groups.Contains(key[..end])
            && (
                word.Length == 1 || EnumerationWords.Contains(word)
                    || Regex.IsMatch(Page, $@"(?<!\.){Regex.Escape(word)}\b", RegexOptions.None, TimeSpan.FromSeconds(10)));
    }

    /// <summary>As the page writes them; a text that bends with a count is one.</summary>
    private static HashSet<string> PageKeys() => [.. KeysIn(Language.English.File.Root.GetProperty("page"), "")];

    private static IEnumerable<string> KeysIn(JsonElement group, string before) => group.EnumerateObject()
        .Where(one => one.Name != LanguageFile.About)
        .SelectMany(
            one => one.Value.ValueKind is JsonValueKind.Object && !LanguageCheck.Bends(one.Value)
                ? KeysIn(one.Value, $"{before}{one.Name}.")
                : [before + one.Name]);

    private static string TextOf(string folder, string pattern) => string.Join('\n', Directory.EnumerateFiles(folder, pattern, SearchOption.AllDirectories)
        .Where(
            path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                && !path.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
        .Select(File.ReadAllText));

    [GeneratedRegex("""\$?"(?<text>(?:[^"\\\n]|\\.)*)["]""")]
    private static partial Regex Literal();

    [GeneratedRegex("""(?:\bSay|new Sentence|ErrorMessage\.Of)\((?:[^"\n]*\? )?"(?<key>[^"\n]+)["]""")]
    private static partial Regex NamedSentence();

    [GeneratedRegex("""\bsay\((?:[^"\n`)]*\? )?"(?<key>[\w.-]+)["]""")]
    private static partial Regex SaidByPage();

    [GeneratedRegex("""\bsay\(`(?<group>[\w.-]+)\.\$""")]
    private static partial Regex GroupSaidByPage();

    [GeneratedRegex("""this\.say\((?<keys>(?:[^)']*'[^']+')+)""")]
    private static partial Regex SaidByElements();

    [GeneratedRegex("'(?<text>[^']+)'")]
    private static partial Regex SingleQuoted();
}
