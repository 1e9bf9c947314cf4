using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Service.Tests.Answers;

/// <summary>Says where an answer differs from what the exhaustive solver found. Figures may differ by what rounding for reading takes away.</summary>
internal static class OracleComparison
{
    /// <summary>Half a unit of the last decimal shown, and a little for figures worked out in another way.</summary>
    private const double RatioTolerance = 0.0005 + 1e-6;
    private const double PercentTolerance = 0.005 + 1e-6;

    public static IEnumerable<string> Differences(OracleProblem problem, Recommendation answer)
    {
        var expected = Exhaustive.Solve(problem);
        return Exclusions(expected, answer)
            .Concat(Figures("before", expected.BuyNothing.Kit, answer.Before))
            .Concat(Ladders("before", expected.BuyNothing, answer.Telescopes.Select(telescope => telescope.Before)))
            .Concat(expected.Outcome == OracleOutcome.Infeasible ? Infeasible(problem, expected, answer) : Solved(expected, answer));
    }

    /// <summary>How the planning must end.</summary>
    public static string OutcomeOf(OracleProblem problem) => OutcomeOf(Exhaustive.Solve(problem));

    private static string OutcomeOf(OracleResult expected) => expected.Outcome == OracleOutcome.Infeasible ? "infeasible"
        : expected.BuyingNothingIsBest ? "nothing-worthwhile" : "optimal";

    private static IEnumerable<string> Exclusions(OracleResult expected, Recommendation answer) => Same(
        "excluded",
        expected.Exclusions.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Key} {pair.Value}"),
        answer.ListOfExcluded().Select(one => $"{one.ItemId} {one.Reason}"));

    private static IEnumerable<string> Solved(OracleResult expected, Recommendation answer)
    {
        var bought = answer.Purchases.Select(one => one.ItemId).Order(StringComparer.Ordinal).ToArray();
        var best = expected.BestSets.FirstOrDefault(set => set.Ids.SequenceEqual(bought));
        if (best is null)
        {
            return [$"purchases: {string.Join(' ', bought)} is none of the best sets"];
        }

        return
        [
            .. Same("outcome", OutcomeOf(expected), answer.Outcome),
            .. Same("proved", true, answer.Solver.Proved),
            .. Same("conflicts", null, answer.Conflicts),
            .. Same("totalPrice", expected.BestPrice, answer.TotalPrice),
            .. Near("leastLargestStep", expected.LeastLargestStep, answer.LeastLargestStep, RatioTolerance),
            .. Near("bound", expected.LeastLargestStep, answer.Solver.Bound, RatioTolerance),
            .. Figures("after", best.Figures.Kit, answer.After),
            .. Ladders("after", best.Figures, answer.Telescopes.Select(telescope => telescope.After)),
            .. Same("wish not granted", expected is { WishAsked: true, WishGranted: false }, answer.Notes.Any(note => note.Code == "wide-view-not-granted")),
        ];
    }

    private static IEnumerable<string> Infeasible(OracleProblem problem, OracleResult expected, Recommendation answer)
    {
        if (answer.Outcome != "infeasible")
        {
            return [$"outcome: {answer.Outcome} instead of infeasible"];
        }

        var nearest = answer.Conflicts!.Nearest;
        return
        [
            .. Same("nearest budget", expected.Nearest!.Budget, nearest.Budget),
            .. Same("nearest maxPurchases", expected.Nearest.MaxPurchases, nearest.MaxPurchases),
            .. Same("nearest maxBarlows", expected.Nearest.MaxBarlows, nearest.MaxBarlows),
            .. Same("nearest allowedOverlaps", expected.Nearest.AllowedOverlaps, nearest.AllowedOverlaps),
            .. Same("nearest maxPricePerItem", expected.Nearest.MaxPricePerItem, nearest.MaxPricePerItem),
            .. Same("nearest maxItemMassGrams", expected.Nearest.MaxItemMassGrams, nearest.MaxItemMassGrams),
            .. Same("nearest names", problem.Preferences.MustFrame.Select(frame => frame.Name), nearest.MustFrame.Select(frame => frame.Name)),
            .. Same("nearest widths", Widths(expected.Nearest.MustFrame), Widths(nearest.MustFrame.Select(frame => frame.WidthDeg))),
            .. Same("purchases", 0, answer.Purchases.Count),
            .. Same("spare", 0, answer.Spare.Count),
            .. Same("totalPrice", null, answer.TotalPrice),
            .. Same("after", null, answer.After),
            .. Same("leastLargestStep", null, answer.LeastLargestStep),
            .. Same("bound", null, answer.Solver.Bound),
            .. answer.Telescopes.SelectMany(telescope => Same("after in a telescope", null, telescope.After)),
        ];
    }

    private static IEnumerable<string> Ladders(string when, OracleKitFigures expected, IEnumerable<Ladder?> actual) =>
        expected.Telescopes.Zip(actual).SelectMany((pair, i) => Figures($"telescope {i + 1} {when}", pair.First, pair.Second?.Figures()));

    private static IEnumerable<string> Figures(string what, OracleFigures expected, Figures? actual) =>
    [
        .. Near($"{what} largestStep", expected.HasUsableView ? expected.LargestStep : null, actual?.LargestStep, RatioTolerance),
        .. Near($"{what} meanMismatchPercent", expected.HasUsableView ? Percent(expected.MeanMismatch) : null, actual?.MeanMismatchPercent, PercentTolerance),
        .. Near($"{what} meanExcessPercent", expected.HasUsableView ? Percent(expected.MeanExcess) : null, actual?.MeanExcessPercent, PercentTolerance),
        .. Near($"{what} servedPercent", 100 * expected.ServedShare, actual?.ServedPercent, PercentTolerance),
    ];

    private static double Percent(double mean) => 100 * (Math.Exp(mean) - 1);

    private static IEnumerable<string> Widths(IEnumerable<double?> widths) => widths.Select(width => FormattableString.Invariant($"{width:0.00}"));

    private static IEnumerable<string> Same<T>(string what, T expected, T actual) =>
        EqualityComparer<T>.Default.Equals(expected, actual) ? [] : [$"{what}: {actual} instead of {expected}"];

    private static IEnumerable<string> Same(string what, IEnumerable<string?> expected, IEnumerable<string?> actual) =>
        Same(what, string.Join(", ", expected), string.Join(", ", actual));

    private static IEnumerable<string> Near(string what, double? expected, double? actual, double tolerance) =>
        (expected is null && actual is null) || Math.Abs((expected - actual) ?? double.PositiveInfinity) <= tolerance
            ? [] : [FormattableString.Invariant($"{what}: {actual} instead of {expected}")];
}
