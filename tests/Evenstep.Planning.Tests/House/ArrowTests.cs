using System.Text.RegularExpressions;

namespace Evenstep.Planning.Tests.House;

/// <summary>The folders of the planning library look only leftwards: Optics, Purchases, Solving, Advice.</summary>
public sealed partial class ArrowTests
{
    private const string Library = "src/Evenstep.Planning";
    private const string Solver = "Google.OrTools";

    private static readonly string[] Folders = ["Budgets", "Optics", "Purchases", "Solving", "Advice"];

    [Fact]
    public void Every_source_of_the_library_lies_in_a_folder_and_its_namespace_says_so()
    {
        foreach (var file in SourceTree.Under(Library))
        {
            var folder = FolderOf(file);
            Assert.Contains(folder, Folders);
            var declared = Assert.Single(file.Lines, line => line.StartsWith("namespace ", StringComparison.Ordinal));
            Assert.StartsWith($"namespace Evenstep.Planning.{folder}", declared, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void No_folder_looks_rightwards() => Assert.Empty(SourceTree.Under(Library).SelectMany(LooksRightwards));

    [Fact]
    public void Only_solving_knows_the_solver() => Assert.Empty(
        SourceTree.Under("src")
            .Where(file => !file.Path.StartsWith($"{Library}/Solving/", StringComparison.Ordinal))
            .Where(file => file.CodeLines.Any(line => line.Contains(Solver, StringComparison.Ordinal)))
            .Select(file => file.Path));

    /// <summary>Two engines confirm each other only as far as they share nothing but the problem.</summary>
    [Theory]
    [InlineData("Search", "Model")]
    [InlineData("Search", "Google")]
    [InlineData("Model", "Search")]
    public void Neither_engine_knows_the_other(string engine, string other) => Assert.Empty(
        SourceTree.Under($"{Library}/Solving/{engine}")
            .Where(file => file.CodeLines.Any(line => Regex.IsMatch(line, $@"\busing\b.*\b{other}\b|\b{other}\.[A-Z]|\b{other}Engine\b")))
            .Select(file => file.Path));

    [Theory]
    [InlineData("Optics", "using Evenstep.Planning.Purchases;", true)]
    [InlineData("Purchases", "using static Evenstep.Planning.Solving.Planner;", true)]
    [InlineData("Solving", "using Reasons = Evenstep.Planning.Advice.Reasons;", true)]
    [InlineData("Purchases", "    Advice.Reasons.For(item);", true)]
    [InlineData("Advice", "using Evenstep.Planning.Solving;", false)]
    [InlineData("Solving", "using Evenstep.Planning.Optics;", false)]
    [InlineData("Optics", "// Advice.Reasons says why.", false)]
    [InlineData("Optics", "namespace Evenstep.Planning.Optics;", false)]
    public void A_look_rightwards_is_seen_however_it_is_written(string folder, string line, bool rightwards) =>
        Assert.Equal(rightwards, LooksRightwards(new SourceFile($"{Library}/{folder}/File.cs", [line])).Any());

    private static string FolderOf(SourceFile file) => file.Path[(Library.Length + 1)..].Split('/')[0];

    private static IEnumerable<string> LooksRightwards(SourceFile file)
    {
        var own = Array.IndexOf(Folders, FolderOf(file));
        return file.CodeLines
            .Where(line => Mention().Matches(line).Any(mention => Array.IndexOf(Folders, mention.Groups["folder"].Value) > own))
            .Select(line => $"{file.Path}: {line}");
    }

    /// <summary>A namespace of ours in full, or as the shared parent lets it be shortened.</summary>
    [GeneratedRegex(@"(Evenstep\.Planning\.(?<folder>Optics|Purchases|Solving|Advice)\b)|((?<![\w.])(?<folder>Optics|Purchases|Solving|Advice)\.[A-Z]\w*\b(?=[.<(;]))")]
    private static partial Regex Mention();
}
