using System.Text.Json;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Service.Tests.Answers;

/// <summary>Says where an answer differs from what the exhaustive solver found. Figures may differ by what rounding for reading takes away.</summary>
internal static class OracleComparison
{
    /// <summary>Half a unit of the last decimal shown, and a little for figures worked out in another way.</summary>
    private const double RatioTolerance = 0.0005 + 1e-6;
    private const double PercentTolerance = 0.005 + 1e-6;

    public static IEnumerable<string> Differences(OracleProblem problem, JsonElement answer)
    {
        var expected = Exhaustive.Solve(problem);
        return Exclusions(expected, answer)
            .Concat(Figures("before", expected.BuyNothing.Kit, answer.GetProperty("before")))
            .Concat(Ladders("before", expected.BuyNothing, answer))
            .Concat(expected.Outcome == OracleOutcome.Infeasible ? Infeasible(problem, expected, answer) : Solved(expected, answer));
    }

    private static IEnumerable<string> Exclusions(OracleResult expected, JsonElement answer) => Same(
        "excluded",
        expected.Exclusions.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Key} {pair.Value}"),
        answer.GetProperty("excluded").EnumerateArray().Select(one => $"{Text(one, "itemId")} {Text(one, "reason")}"));

    private static IEnumerable<string> Solved(OracleResult expected, JsonElement answer)
    {
        var bought = answer.GetProperty("purchases").EnumerateArray().Select(one => Text(one, "itemId")!).Order(StringComparer.Ordinal).ToArray();
        var best = expected.BestSets.FirstOrDefault(set => set.Ids.SequenceEqual(bought));
        if (best is null)
        {
            return [$"purchases: {string.Join(' ', bought)} is none of the best sets"];
        }

        return
        [
            .. Same("outcome", expected.BuyingNothingIsBest ? "nothing-worthwhile" : "optimal", Text(answer, "outcome")),
            .. Same("proved", true, answer.GetProperty("solver").GetProperty("proved").GetBoolean()),
            .. Same("conflicts", JsonValueKind.Null, answer.GetProperty("conflicts").ValueKind),
            .. Same("totalPrice", expected.BestPrice, Amount(answer, "totalPrice")),
            .. Near("leastLargestStep", expected.LeastLargestStep, Number(answer, "leastLargestStep"), RatioTolerance),
            .. Near("bound", expected.LeastLargestStep, Number(answer.GetProperty("solver"), "bound"), RatioTolerance),
            .. Figures("after", best.Figures.Kit, answer.GetProperty("after")),
            .. Ladders("after", best.Figures, answer),
            .. Same("wish not granted", expected is { WishAsked: true, WishGranted: false }, HasNote(answer, "wide-view-not-granted")),
        ];
    }

    private static IEnumerable<string> Infeasible(OracleProblem problem, OracleResult expected, JsonElement answer)
    {
        if (Text(answer, "outcome") != "infeasible")
        {
            return [$"outcome: {Text(answer, "outcome")} instead of infeasible"];
        }

        var nearest = answer.GetProperty("conflicts").GetProperty("nearest");
        var frames = nearest.GetProperty("mustFrame").EnumerateArray().ToArray();
        return
        [
            .. Same("nearest budget", expected.Nearest!.Budget, Amount(nearest, "budget")),
            .. Same("nearest maxPurchases", expected.Nearest.MaxPurchases, (int?)Number(nearest, "maxPurchases")),
            .. Same("nearest maxBarlows", expected.Nearest.MaxBarlows, (int?)Number(nearest, "maxBarlows")),
            .. Same("nearest allowedOverlaps", expected.Nearest.AllowedOverlaps, (int?)Number(nearest, "allowedOverlaps")),
            .. Same("nearest maxPricePerItem", expected.Nearest.MaxPricePerItem, Amount(nearest, "maxPricePerItem")),
            .. Same("nearest maxItemMassGrams", expected.Nearest.MaxItemMassGrams, Number(nearest, "maxItemMassGrams")),
            .. Same("nearest names", problem.Preferences.MustFrame.Select(frame => frame.Name), frames.Select(frame => Text(frame, "name"))),
            .. Same("nearest widths", Widths(expected.Nearest.MustFrame), Widths(frames.Select(frame => Number(frame, "widthDeg")))),
            .. Same("purchases", 0, answer.GetProperty("purchases").GetArrayLength()),
            .. Same("spare", 0, answer.TryGetProperty("spare", out var spare) ? spare.GetArrayLength() : 0),
            .. NullFields(answer, "totalPrice", "after", "leastLargestStep"),
            .. NullFields(answer.GetProperty("solver"), "bound"),
            .. answer.GetProperty("telescopes").EnumerateArray().SelectMany(telescope => NullFields(telescope, "after")),
        ];
    }

    private static IEnumerable<string> Ladders(string when, OracleKitFigures expected, JsonElement answer) =>
        expected.Telescopes.Zip(answer.GetProperty("telescopes").EnumerateArray())
            .SelectMany((pair, i) => Figures($"telescope {i + 1} {when}", pair.First, pair.Second.GetProperty(when)));

    private static IEnumerable<string> Figures(string what, OracleFigures expected, JsonElement actual) =>
    [
        .. Near($"{what} largestStep", expected.HasUsableView ? expected.LargestStep : null, Number(actual, "largestStep"), RatioTolerance),
        .. Near($"{what} meanMismatchPercent", expected.HasUsableView ? Percent(expected.MeanMismatch) : null, Number(actual, "meanMismatchPercent"), PercentTolerance),
        .. Near($"{what} meanExcessPercent", expected.HasUsableView ? Percent(expected.MeanExcess) : null, Number(actual, "meanExcessPercent"), PercentTolerance),
        .. Near($"{what} servedPercent", 100 * expected.ServedShare, Number(actual, "servedPercent"), PercentTolerance),
    ];

    private static double Percent(double mean) => 100 * (Math.Exp(mean) - 1);

    private static bool HasNote(JsonElement answer, string code) =>
        answer.GetProperty("notes").EnumerateArray().Any(note => Text(note, "code") == code);

    private static IEnumerable<string> NullFields(JsonElement of, params string[] names) =>
        names.Where(name => of.GetProperty(name).ValueKind != JsonValueKind.Null).Select(name => $"{name} is not null");

    private static IEnumerable<string> Widths(IEnumerable<double?> widths) => widths.Select(width => FormattableString.Invariant($"{width:0.00}"));

    private static IEnumerable<string> Same<T>(string what, T expected, T actual) =>
        EqualityComparer<T>.Default.Equals(expected, actual) ? [] : [$"{what}: {actual} instead of {expected}"];

    private static IEnumerable<string> Same(string what, IEnumerable<string?> expected, IEnumerable<string?> actual) =>
        Same(what, string.Join(", ", expected), string.Join(", ", actual));

    private static IEnumerable<string> Near(string what, double? expected, double? actual, double tolerance) =>
        (expected is null && actual is null) || Math.Abs((expected - actual) ?? double.PositiveInfinity) <= tolerance
            ? [] : [FormattableString.Invariant($"{what}: {actual} instead of {expected}")];

    private static string? Text(JsonElement of, string name) => of.GetProperty(name).GetString();

    private static double? Number(JsonElement of, string name) =>
        of.GetProperty(name) is { ValueKind: not JsonValueKind.Null } value ? value.GetDouble() : null;

    private static decimal? Amount(JsonElement of, string name) =>
        of.GetProperty(name) is { ValueKind: not JsonValueKind.Null } value ? value.GetDecimal() : null;
}
