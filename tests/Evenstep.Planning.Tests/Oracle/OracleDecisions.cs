namespace Evenstep.Planning.Tests.Oracle;

/// <summary>What can be asked of a problem.</summary>
public enum OracleQuestion
{
    Recommendation,
    SpendingCurve,
    BuyingPath,
    Spare,
}

/// <summary>Which of the definitions decide a problem.</summary>
public static class OracleDecisions
{
    private const OracleDefinitions OnlyOfSpare = OracleDefinitions.SpareExcess | OracleDefinitions.SpareComfort | OracleDefinitions.SpareField;

    /// <summary>Every definition that has a part in a recommendation.</summary>
    public static IReadOnlyList<OracleDefinitions> All { get; } =
        [.. Enum.GetValues<OracleDefinitions>().Where(one => one != OracleDefinitions.None && ((OnlyOfSpare | OracleDefinitions.LossLeeway) & one) == 0)];

    /// <summary>Of some definitions those without which the answer would be another.</summary>
    public static IReadOnlyList<OracleDefinitions> Of(
        OracleProblem problem, IReadOnlyCollection<OracleDefinitions> asked, OracleQuestion question = OracleQuestion.Recommendation)
    {
        string answer = AnswerTo(question, problem, problem);
        return [.. asked.Where(definition => AnswerTo(question, problem with { Without = problem.Without | definition }, problem) != answer)];
    }

    private static string AnswerTo(OracleQuestion question, OracleProblem problem, OracleProblem whole) => question switch
    {
        OracleQuestion.SpendingCurve => Written(OracleSpending.Of(problem).Frontier().SelectMany(point => point.Plans.Select(plan => plan.Ids))),
        OracleQuestion.BuyingPath => Written(OraclePaths.Best(problem).Select(path => path.Ids)),
        OracleQuestion.Spare => Exhaustive.Elect(whole).BestSets is [var best, ..] ? Written([OracleSpare.Alone(problem, best.Ids)]) : "",
        _ => Written(Exhaustive.Elect(problem).BestSets.Select(set => set.Ids)),
    };

    private static string Written(IEnumerable<IReadOnlyList<string>> lists) => string.Concat(lists.Select(list => $"[{string.Join(' ', list)}]"));
}
