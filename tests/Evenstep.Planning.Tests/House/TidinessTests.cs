using System.Text.RegularExpressions;

namespace Evenstep.Planning.Tests.House;

public sealed partial class TidinessTests
{
    private const int MostLines = 250;
    private const int MostLetters = 160;

    /// <summary>Put together here, so that this file does not find itself.</summary>
    private static readonly string[] Unwanted = ["TO" + "DO", "FIX" + "ME", "DateTime" + ".Now"];

    private static SourceFile[] All => [.. SourceTree.Under("src"), .. SourceTree.Under("tests"), .. SourceTree.Under("benchmarks")];

    [Fact]
    public void No_source_is_long() => Assert.Empty(
        SourceTree.Under("src").Where(file => file.Lines.Length > MostLines).Select(file => $"{file.Path}: {file.Lines.Length} lines"));

    [Fact]
    public void No_line_is_long() => Assert.Empty(SourceTree.Faults(All, line => line.Length > MostLetters));

    [Theory]
    [InlineData("*.js")]
    [InlineData("*.css")]
    public void No_line_of_the_page_and_the_elements_is_long(string pattern) =>
        Assert.Empty(SourceTree.Faults(SourceTree.Under("src/Evenstep.Service", pattern), line => line.Length > MostLetters));

    [Fact]
    public void No_line_has_a_tab() => Assert.Empty(SourceTree.Faults(All, line => line.Contains('\t', StringComparison.Ordinal)));

    [Fact]
    public void No_line_ends_in_a_space() => Assert.Empty(SourceTree.Faults(All, line => line.EndsWith(' ')));

    [Fact]
    public void Nothing_is_left_to_do_and_nothing_reads_the_local_clock() => Assert.Empty(
        SourceTree.Faults(All, line => Array.Exists(Unwanted, word => line.Contains(word, StringComparison.Ordinal))));

    [Fact]
    public void A_tolerance_has_a_name() => Assert.Empty(
        SourceTree.Under("src").SelectMany(file => file.CodeLines.Where(IsBareTolerance).Select(line => $"{file.Path}: {line}")));

    [Theory]
    [InlineData("if (a < b - 1e-9)", true)]
    [InlineData("return x + 1E-6;", true)]
    [InlineData("    private const double Tiny = 1e-9;", false)]
    [InlineData("return x + 1e-3;", false)]
    public void A_bare_tolerance_is_seen(string line, bool bare) => Assert.Equal(bare, IsBareTolerance(line));

    private static bool IsBareTolerance(string line) =>
        SmallNumber().IsMatch(line) && !line.Contains("const ", StringComparison.Ordinal);

    [GeneratedRegex(@"\b1e-0?[69]\b", RegexOptions.IgnoreCase)]
    private static partial Regex SmallNumber();
}
