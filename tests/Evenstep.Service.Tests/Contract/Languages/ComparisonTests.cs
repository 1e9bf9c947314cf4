using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Evenstep.Planning.Advice;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Contract.Languages;

/// <summary>What is said to be more or less than something reads so.</summary>
public sealed partial class ComparisonTests
{
    private const int NearProblems = 300;
    private const int Problems = 300;
    private const int FirstSeed = 730_000;

    /// <summary>How figures are written that a sentence sets against each other.</summary>
    private static readonly string[] Compared = ["x", "deg", "mm", "g", "cone", "money"];

    private static readonly string[] Cautions =
        ["caution/exit-pupil-narrow", "caution/exit-pupil-wide", "caution/heavy-for-focuser", "caution/zoom-field-narrow"];

    [Fact]
    public void Two_figures_of_a_sentence_that_differ_never_read_alike()
    {
        Sentence[] said = [.. Said()];

        var pairs = said.Sum(sentence => Language.All.Sum(language => AssertReadUnlike(sentence, language)));

        Assert.True(pairs > 2000, $"only {pairs} pairs");
        Assert.All(Cautions, caution => Assert.Contains(said, sentence => sentence.Key == caution));
    }

    /// <summary>In the answer's values too.</summary>
    [Fact]
    public void A_caution_is_given_only_where_the_limit_is_passed_by_what_can_be_read()
    {
        var cautions = Said().Where(sentence => Cautions.Contains(sentence.Key)).ToList();

        Assert.NotEmpty(cautions);
        Assert.All(cautions, caution =>
        {
            var figures = caution.Values.Where(value => value is { Value: double } && value.Name != "power")
                .Select(value => Rounded.To((double)value.Value!, value.Decimals)).ToList();
            Assert.Equal(2, figures.Distinct().Count());
        });
    }

    [Theory]
    [InlineData(0.7, 0.698, "the exit pupil is only 0.698 mm, less than 0.7 mm")]
    [InlineData(0.7, 0.68, "the exit pupil is only 0.68 mm, less than 0.7 mm")]
    [InlineData(0.7, 0.7, "the exit pupil is only 0.7 mm, less than 0.7 mm")]
    public void Figures_get_as_many_places_as_tell_them_apart(double least, double exitPupil, string part) => Assert.Contains(
        part,
        new Sentence("caution/exit-pupil-narrow",
        [
            RemarkValue.Of("telescope", "telescope 1"),
            RemarkValue.Of("names", "Ten"),
            RemarkValue.Power("power", 290),
            RemarkValue.Millimetres("exitPupilMm", exitPupil),
            RemarkValue.Millimetres("leastMm", least),
        ]).In(Language.English),
        StringComparison.Ordinal);

    [Fact]
    public void Figures_of_a_sentence_within_another_are_told_apart_as_well()
    {
        RemarkValue widest = RemarkValue.Of("widest", new Sentence("breach/widest", [RemarkValue.Degrees("trueFieldDeg", 1.4987)]));

        Assert.Equal(
            "Mit dieser Liste passten 1,5° nirgends auf einmal ins Gesichtsfeld; das größte wahre Gesichtsfeld wäre 1,499°.",
            new Sentence("breach/must-frame", [RemarkValue.Degrees("widthDeg", 1.5), widest]).In(German.Language));
    }

    private static IEnumerable<Sentence> Said() =>
    [
        .. Enumerable.Range(FirstSeed, NearProblems).SelectMany(seed => SaidOfPlans.Of(new NearLimits(seed).Body(), "item-0", "item-1")),
        .. SaidOfPlans.Random(Problems, FirstSeed),
    ];

    /// <returns>How many pairs there were.</returns>
    private static int AssertReadUnlike(Sentence sentence, Language language)
    {
        var template = language.Sentences[sentence.Key];
        var read = Regex.Match(sentence.In(language), $"^{PatternOf(template)}$", RegexOptions.ExplicitCapture | RegexOptions.Singleline);
        Assert.True(read.Success, $"{sentence.In(language)} is no {template}");

        var slots = Sentence.Slot().Matches(template).Select(slot => (Name: slot.Groups["name"].Value, How: slot.Groups["how"].Value)).Distinct().ToList();
        var pairs = from one in slots
                    from other in slots
                    where one.How == other.How && Compared.Contains(one.How) && string.CompareOrdinal(one.Name, other.Name) < 0
                        && Differ(ValueOf(sentence, one.Name), ValueOf(sentence, other.Name))
                    select (read.Groups[one.Name].Value, read.Groups[other.Name].Value);
        return pairs.Count(pair =>
        {
            Assert.NotEqual(pair.Item1, pair.Item2);
            return true;
        });
    }

    private static object? ValueOf(Sentence sentence, string name) => sentence.Values.First(value => value.Name == name).Value;

    /// <summary>By more than a millionth, or by a cent.</summary>
    private static bool Differ(object? one, object? other) => (one, other) switch
    {
        (double a, double b) => Math.Abs(a - b) > 1e-6 * Math.Abs(a),
        (decimal a, decimal b) => a != b,
        _ => false,
    };

    /// <summary>A slot that comes twice reads the same twice.</summary>
    private static string PatternOf(string template)
    {
        HashSet<string> seen = [];
        return EscapedSlot().Replace(Regex.Escape(template), slot =>
            seen.Add(slot.Groups["name"].Value) ? $"(?<{slot.Groups["name"].Value}>.*?)" : $@"\k<{slot.Groups["name"].Value}>");
    }

    [GeneratedRegex(@"\\\{(?<name>\w+)(:\w+)?\}", RegexOptions.ExplicitCapture)]
    private static partial Regex EscapedSlot();
}
