using System.Text.RegularExpressions;

namespace Evenstep.Planning.Tests.House;

/// <summary>The folders of the planning library look only leftwards: Optics, Purchases, Solving, Advice.</summary>
public sealed partial class ArrowTests
{
    private const string Library = "src/Evenstep.Planning";
    private const string Solver = "Google.OrTools";

    /// <summary>The folders of Solving, the lower first; that of the planner itself is the last, and has no name here.</summary>
    private static readonly string[] Floors = ["Search", "Paths", "Model/Subproblems", "Model/Rules", "Model/Cuts", "Model", ""];

    /// <summary>The types of the folders whose namespace is seen from below without a using.</summary>
    private static readonly Dictionary<string, Regex> NamesSeenFromBelow = new[] { "Model", "" }.ToDictionary(floor => floor, NamesOn);

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
    public void No_folder_of_solving_looks_upwards() => Assert.Empty(SourceTree.Under($"{Library}/Solving").SelectMany(LooksUpwards));

    [Theory]
    [InlineData("Search", "using Evenstep.Planning.Solving.Paths;", true)]
    [InlineData("Model/Subproblems", "using Evenstep.Planning.Solving.Model.Rules;", true)]
    [InlineData("Model/Rules", "using Evenstep.Planning.Solving.Model;", true)]
    [InlineData("Model/Cuts", "using Evenstep.Planning.Solving.Model.Subproblems;", false)]
    [InlineData("Paths", "using Evenstep.Planning.Solving.Search;", false)]
    [InlineData("Paths", "        var plan = Planner.Solve(problem, budget);", true)]
    [InlineData("Model/Rules", "        new CutLoop(settled, recent).Run();", true)]
    [InlineData("Model", "        new CutLoop(settled, recent).Run();", false)]
    public void A_look_upwards_is_seen(string folder, string line, bool upwards) =>
        Assert.Equal(upwards, LooksUpwards(new SourceFile($"{Library}/Solving/{folder}/File.cs", [line])).Any());

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

    private static string FloorOf(SourceFile file) => string.Join('/', file.Path[(Library.Length + "/Solving/".Length)..].Split('/').SkipLast(1));

    private static IEnumerable<string> LooksUpwards(SourceFile file)
    {
        var own = Array.IndexOf(Floors, FloorOf(file));
        Assert.True(own >= 0, $"{file.Path} lies in no folder that the test knows.");
        return file.CodeLines
            .Where(line => Floors[(own + 1)..].Any(above => Names(line, above)))
            .Select(line => $"{file.Path}: {line}");
    }

    private static bool Names(string line, string floor) =>
        line.StartsWith($"using Evenstep.Planning.Solving.{floor}".Replace('/', '.').TrimEnd('.') + ";", StringComparison.Ordinal)
        || (NamesSeenFromBelow.TryGetValue(floor, out var names) && !line.StartsWith("namespace", StringComparison.Ordinal) && names.IsMatch(line));

    private static Regex NamesOn(string floor)
    {
        var types = SourceTree.Under($"{Library}/Solving").Where(file => FloorOf(file) == floor)
            .SelectMany(file => file.CodeLines).SelectMany(line => Declared().Matches(line)).Select(type => type.Groups["name"].Value).Distinct();
        return new Regex($@"(?<![\w.])({string.Join('|', types)})\b(?=[.(<>?]| \w)");
    }

    [GeneratedRegex(@"^(?:public|internal) .*\b(?:class|record struct|record|struct|enum|interface) (?<name>\w+)")]
    private static partial Regex Declared();

    /// <summary>A namespace of ours in full, or as the shared parent lets it be shortened.</summary>
    [GeneratedRegex(
        @"(Evenstep\.Planning\.(?<folder>Optics|Purchases|Solving|Advice)\b)|((?<![\w.])(?<folder>Optics|Purchases|Solving|Advice)\.[A-Z]\w*\b(?=[.<(;]))")]
    private static partial Regex Mention();
}
