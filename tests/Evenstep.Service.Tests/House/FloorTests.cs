namespace Evenstep.Service.Tests.House;

/// <summary>The folders of the service are floors: what lies on one uses its own and those below, and nothing goes in a circle.</summary>
public sealed class FloorTests
{
    private const string TopFloor = "";

    /// <summary>Files that a reader of one may have to open.</summary>
    private const int MostReached = 3;

    /// <summary>From the ground up. The last is the entry, which puts all together.</summary>
    private static readonly string[] Floors = ["Contract", "Http", "Catalogues", "Answering", "Features", "Elements", "Pages", TopFloor];

    private static readonly Lazy<SourceGraph> Service = new(() => SourceGraph.Read(Path.Combine(Repository.Root, "src", "Evenstep.Service")));

    [Fact]
    public void Every_file_lies_on_a_floor() => Assert.All(Service.Value.Files, file => Assert.Contains(FloorOf(file), Floors));

    [Fact]
    public void Nothing_uses_what_lies_above_it() => Assert.Empty(UsesAbove(Service.Value));

    [Fact]
    public void No_feature_uses_another() => Assert.Empty(UsesOfOtherFeatures(Service.Value));

    [Fact]
    public void Folders_of_the_service_do_not_go_in_circles() => Assert.Empty(Service.Value.Circles(FolderOf).Select(folders => string.Join(", ", folders)));

    [Fact]
    public void What_reads_JSON_knows_little() =>
        Assert.InRange(Service.Value.ReachedFrom("Http/Bodies/StrictJson.cs").Count, 1, MostReached);

    [Fact]
    public void A_use_is_seen_however_it_is_written()
    {
        var graph = SourceGraph.Of([
            ("Contract/Low.cs", "namespace A.Contract; static class Low { public const int Size = 1; public static int Of(this string text) => 1; }"),
            ("Contract/Other.cs", "namespace A.Contract; record Other { public Low2 Made => new(); }"),
            ("Contract/Low2.cs", "namespace A.Contract; record Low2;"),
            ("Http/Constant.cs", "using A.Contract; namespace A.Http; class Constant { int size = Low.Size; }"),
            ("Http/Static.cs", "using static A.Contract.Low; namespace A.Http; class Static { int size = Size; }"),
            ("Http/Extension.cs", "using A.Contract; namespace A.Http; class Extension { int size = \"\".Of(); }"),
            ("Http/Member.cs", "using A.Contract; namespace A.Http; class Member { object Of(Other other) { var made = other.Made; return made; } }"),
            ("Http/Comment.cs", "using A.Contract; namespace A.Http; /* Low.Size */ class Comment;"),
        ]);

        Assert.Equal(
            [
                ("Contract/Other.cs", "Contract/Low2.cs"), ("Http/Constant.cs", "Contract/Low.cs"), ("Http/Extension.cs", "Contract/Low.cs"),
                ("Http/Member.cs", "Contract/Other.cs"), ("Http/Static.cs", "Contract/Low.cs"),
            ],
            graph.Arrows);
    }

    [Fact]
    public void Uses_above_others_features_and_circles_are_seen()
    {
        var graph = SourceGraph.Of([
            ("Contract/Low.cs", "class Low { Feature up; }"),
            ("Features/One/Feature.cs", "class Feature { Other other; }"),
            ("Features/Two/Other.cs", "class Other { Low low; }"),
        ]);

        Assert.Equal(["Contract/Low.cs uses Features/One/Feature.cs"], UsesAbove(graph));
        Assert.Equal(["Features/One/Feature.cs uses Features/Two/Other.cs"], UsesOfOtherFeatures(graph));
        Assert.Equal(["Contract", "Features/One", "Features/Two"], Assert.Single(graph.Circles(FolderOf)));
    }

    private static IEnumerable<string> UsesAbove(SourceGraph graph) =>
        from arrow in graph.Arrows
        where Array.IndexOf(Floors, FloorOf(arrow.Used)) > Array.IndexOf(Floors, FloorOf(arrow.User))
        select $"{arrow.User} uses {arrow.Used}";

    private static IEnumerable<string> UsesOfOtherFeatures(SourceGraph graph) =>
        from arrow in graph.Arrows
        where FloorOf(arrow.User) == "Features" && FloorOf(arrow.Used) == "Features" && FolderOf(arrow.User) != FolderOf(arrow.Used)
        select $"{arrow.User} uses {arrow.Used}";

    private static string FloorOf(string file) => file.Contains('/', StringComparison.Ordinal) ? file.Split('/')[0] : TopFloor;

    private static string FolderOf(string file) => file.Contains('/', StringComparison.Ordinal) ? file[..file.LastIndexOf('/')] : TopFloor;
}
