using System.Text.RegularExpressions;

namespace Evenstep.Service.Tests.House;

/// <summary>What DEVELOPERS.md names is there: types, members and files.</summary>
public sealed partial class DevelopersTests
{
    private static readonly string[] Sources = [".cs", ".csproj", ".props", ".targets"];

    private static readonly Lazy<string[]> Files = new(() =>
    [
        .. new[] { "src", "tests", "benchmarks", "openapi", "docker", ".ci", ".github" }
            .SelectMany(folder => Directory.EnumerateFileSystemEntries(Path.Combine(Repository.Root, folder), "*", SearchOption.AllDirectories))
            .Select(path => Path.GetRelativePath(Repository.Root, path).Replace('\\', '/'))
            .Where(path => !path.Split('/').Any(part => part is "bin" or "obj" or "node_modules")),
        "Directory.Build.props",
    ]);

    private static readonly Lazy<HashSet<string>> Words = new(() =>
    [
        .. Files.Value
            .Where(path => !path.EndsWith("DevelopersTests.cs", StringComparison.Ordinal))
            .Where(path => Sources.Contains(Path.GetExtension(path)) && File.Exists(Path.Combine(Repository.Root, path)))
            .SelectMany(path => Word().Matches(File.ReadAllText(Path.Combine(Repository.Root, path))))
            .Select(word => word.Value),
    ]);

    private static string Text => File.ReadAllText(Path.Combine(Repository.Root, "DEVELOPERS.md"));

    [Fact]
    public void Every_name_is_one_of_the_code() => Assert.Empty(UnknownNames(Text));

    [Fact]
    public void Every_path_is_one_of_the_repository() => Assert.Empty(UnknownPaths(Text));

    [Theory]
    [InlineData("`NoSuchThing`", 1)]
    [InlineData("`WorkBudget.NoSuchThing`", 1)]
    [InlineData("`WorkBudget`, `of(No)`, `EMFILE`", 0)]
    public void An_unknown_name_is_seen(string text, int unknown) => Assert.Equal(unknown, UnknownNames(text).Count());

    [Theory]
    [InlineData("`House/NoSuchTests.cs`", 1)]
    [InlineData("`House/DevelopersTests.cs`, `House/DevelopersTests`, `src/Evenstep.Service/`", 0)]
    public void An_unknown_path_is_seen(string text, int unknown) => Assert.Equal(unknown, UnknownPaths(text).Count());

    private static IEnumerable<string> UnknownNames(string text) => Quoted().Matches(text)
        .Select(quoted => quoted.Groups["said"].Value)
        .Where(said => Name().IsMatch(said) && !Word().Matches(said).All(word => Words.Value.Contains(word.Value)));

    private static IEnumerable<string> UnknownPaths(string text) => Quoted().Matches(text)
        .Select(quoted => quoted.Groups["said"].Value.TrimEnd('/'))
        .Where(said => FilePath().IsMatch(said) && !Files.Value.Any(path => IsSaid(path, said)));

    private static bool IsSaid(string path, string said) =>
        $"/{path}".EndsWith($"/{said}", StringComparison.Ordinal) || $"/{path}".EndsWith($"/{said}.cs", StringComparison.Ordinal);

    [GeneratedRegex(@"`(?<said>[^`\n]+)`")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\w+")]
    private static partial Regex Word();

    /// <summary>A type, or one and its member.</summary>
    [GeneratedRegex(@"^[A-Z][a-z]\w*(\.\w+)?(<\w+>)?(\(\w*\))?$")]
    private static partial Regex Name();

    [GeneratedRegex(@"^[\w.]+(/[\w.\-]+)+$")]
    private static partial Regex FilePath();
}
