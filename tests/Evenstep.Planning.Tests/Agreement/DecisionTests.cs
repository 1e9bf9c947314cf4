using System.Collections.Concurrent;
using Evenstep.Planning.Tests.Oracle;
using Xunit.Abstractions;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>
/// That engines agree with exhaustive search says something of a definition only where it decides: of the first problems that
/// <see cref="AgreementTests"/> draws it is counted for how many the best sets would be others without it.
/// </summary>
public class DecisionTests(ITestOutputHelper output)
{
    private const int Problems = 1000;

    /// <summary>An exit pupil wider than the eye's decides only 3 of them, for such a view seldom has a rival.</summary>
    private const int Least = 3;

    private const OracleDefinitions OfCurve = OracleDefinitions.EnoughStep | OracleDefinitions.Aside | OracleDefinitions.LessPower;
    private const OracleDefinitions OfPath = OracleDefinitions.EnoughStep | OracleDefinitions.StepLeeway;

    [Fact]
    public void Every_definition_decides_some_of_the_problems_that_are_drawn()
    {
        ConcurrentBag<string> decided = [];
        Parallel.ForEach(Enumerable.Range(0, Problems), new ParallelOptions { MaxDegreeOfParallelism = 2 }, seed =>
        {
            var problem = RandomProblems.Make(seed);
            foreach (var definition in OracleDecisions.Of(problem, OracleDecisions.All))
            {
                decided.Add(definition.ToString());
            }

            if (problem.Preferences.Prefer is { } prefer and not OraclePrefer.Comfort && DiffersFromComfort(problem))
            {
                decided.Add($"prefer {prefer}");
            }

            if (Exhaustive.Elect(problem).StandingAside.Count > 0)
            {
                decided.Add("a telescope stands aside");
            }
        });

        AssertOftenEnough(
            decided,
            [
                .. OracleDecisions.All.Select(definition => definition.ToString()),
                .. Enum.GetValues<OraclePrefer>().Where(prefer => prefer != OraclePrefer.Comfort).Select(prefer => $"prefer {prefer}"),
                "a telescope stands aside",
            ]);
    }

    /// <summary>The first problems of <see cref="SpendingAgreementTests"/> and <see cref="PathAgreementTests"/>.</summary>
    [Theory]
    [InlineData(OracleQuestion.SpendingCurve, OfCurve, 50_000, 500)]
    [InlineData(OracleQuestion.BuyingPath, OfPath, 70_000, 300)]
    public void What_a_curve_and_a_path_go_by_decides_some_of_theirs(
        OracleQuestion question, OracleDefinitions some, int firstSeed, int problems)
    {
        OracleDefinitions[] asked = [.. Enum.GetValues<OracleDefinitions>().Where(one => one != OracleDefinitions.None && (some & one) != 0)];
        AssertOftenEnough(
            Enumerable.Range(firstSeed, problems)
                .SelectMany(seed => OracleDecisions.Of(RandomProblems.Make(seed), asked, question))
                .Select(definition => definition.ToString()),
            [.. asked.Select(definition => definition.ToString())]);
    }

    /// <summary>Tells how often each of them decided.</summary>
    private void AssertOftenEnough(IEnumerable<string> decided, string[] wanted)
    {
        var counts = decided.CountBy(what => what).ToDictionary();
        output.WriteLine(string.Join('\n', counts.OrderBy(one => one.Value).Select(one => $"{one.Value,5} {one.Key}")));
        Assert.Empty(wanted.Where(what => counts.GetValueOrDefault(what) < Least).Select(what => $"{what}: {counts.GetValueOrDefault(what)}"));
    }

    /// <summary>Whether the best sets are others than those of who prefers comfort.</summary>
    private static bool DiffersFromComfort(OracleProblem problem) =>
        Best(problem) != Best(problem with { Preferences = problem.Preferences with { Prefer = OraclePrefer.Comfort } });

    private static string Best(OracleProblem problem) => string.Join('\n', Exhaustive.Elect(problem).BestSets.Select(set => string.Join(' ', set.Ids)));
}
