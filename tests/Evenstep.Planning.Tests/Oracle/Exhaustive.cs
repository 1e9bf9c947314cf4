namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Solves the purchase problem by trying every set of candidates.</summary>
public static class Exhaustive
{
    public static OracleResult Solve(OracleProblem problem)
    {
        OracleResult result = Elect(problem);
        return result.Outcome == OracleOutcome.Infeasible ? result with { Nearest = OracleNearestValues.Of(problem) } : result;
    }

    /// <summary>The same without what would make an infeasible problem solvable.</summary>
    public static OracleResult Elect(OracleProblem problem)
    {
        OracleSearch search = new(problem);
        int[] allowed = [.. search.AllowedSets()];
        OracleResult result = new()
        {
            Outcome = allowed.Length > 0 ? OracleOutcome.Solved : OracleOutcome.Infeasible,
            Exclusions = search.Exclusions,
            BuyNothing = search.Figures(0),
            AllowedSetCount = allowed.Length,
            StandingAside = [.. problem.Telescopes.Where((_, index) => !search.Views.Counting.Contains(index)).Select(telescope => telescope.Name)],
        };
        return allowed.Length > 0 ? new OracleElection(search).Elect(allowed, result) : result;
    }

    /// <summary>The figures of a set of candidates, allowed or not.</summary>
    public static OraclePlan Assess(OracleProblem problem, IReadOnlyCollection<string> ids)
    {
        OracleSearch search = new(problem);
        int set = search.SetOf(ids);
        if (search.Items(set).Count() != ids.Count)
        {
            throw new ArgumentException("Not all of these are candidates.", nameof(ids));
        }

        return Plan(search, set);
    }

    /// <summary>Every set that obeys the five rules, with its figures.</summary>
    public static IReadOnlyList<OraclePlan> AllowedSets(OracleProblem problem)
    {
        OracleSearch search = new(problem);
        return [.. search.AllowedSets().Select(set => Plan(search, set))];
    }

    /// <summary>Whether every telescope's power range is wide enough for the request to be taken.</summary>
    public static bool RangesAreWideEnough(OracleProblem problem) =>
        new OracleBench(problem).Scales.All(scale => scale.IsWideEnough);

    internal static OraclePlan Plan(OracleSearch search, int set)
    {
        OracleItem[] items = [.. search.Items(set)];
        return new OraclePlan(
            [.. items.Select(item => item.Id).Order(StringComparer.Ordinal)],
            search.Price(set),
            OraclePreference.Value(search.Bench, items),
            search.Figures(set),
            search.IsAllowed(set));
    }
}
