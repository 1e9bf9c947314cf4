namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Which of the definitions decide a problem.</summary>
public static class OracleDecisions
{
    /// <summary>Every definition that can be left out, one by one.</summary>
    public static IReadOnlyList<OracleDefinitions> All { get; } =
        [.. Enum.GetValues<OracleDefinitions>().Where(definition => definition != OracleDefinitions.None)];

    /// <summary>Of some definitions those without which another set would be the best, or some or none would be allowed.</summary>
    public static IReadOnlyList<OracleDefinitions> Of(OracleProblem problem, IReadOnlyCollection<OracleDefinitions> asked)
    {
        string answer = AnswerTo(problem);
        return [.. asked.Where(definition => AnswerTo(problem with { Without = problem.Without | definition }) != answer)];
    }

    private static string AnswerTo(OracleProblem problem) =>
        string.Join('\n', Exhaustive.Elect(problem).BestSets.Select(set => string.Join(' ', set.Ids)).Prepend("The best:"));
}
