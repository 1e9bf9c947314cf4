using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>Solves a problem both ways and says where the answers differ: values, never the items chosen.</summary>
internal static class Comparison
{
    /// <summary>Work that no small problem ever needs.</summary>
    public const double WorkLimit = 60;

    /// <summary>How far two figures may be apart that were worked out in different ways.</summary>
    private const double FigureTolerance = 1e-6;

    /// <param name="oracleProblem">To be solved.</param>
    /// <param name="solve">By the planner, or by one of its engines.</param>
    public static IEnumerable<string> Differences(OracleProblem oracleProblem, Func<PurchaseProblem, Plan> solve)
    {
        var problem = Bridge.ToProblem(oracleProblem);
        var expected = Exhaustive.Solve(oracleProblem);
        var plan = solve(problem);
        return Referee.FaultsOf(problem, plan)
            .Concat(Exclusions(expected, plan))
            .Concat(expected.Outcome == OracleOutcome.Infeasible ? Infeasible(expected, plan) : Values(expected, problem, plan));
    }

    private static IEnumerable<string> Exclusions(OracleResult expected, Plan plan)
    {
        var actual = plan.Candidacy.Exclusions.ToDictionary(exclusion => exclusion.Item.Id, exclusion => CodeOf(exclusion.Reason));
        foreach (var (id, code) in expected.Exclusions)
        {
            if (actual.GetValueOrDefault(id) != code)
            {
                yield return $"{id} is excluded as {code}, not as {actual.GetValueOrDefault(id) ?? "nothing"}";
            }
        }

        if (actual.Count != expected.Exclusions.Count)
        {
            yield return $"{expected.Exclusions.Count} items are excluded, not {actual.Count}";
        }
    }

    private static IEnumerable<string> Infeasible(OracleResult expected, Plan plan)
    {
        if (plan.Conflicts is not { Nearest: var nearest })
        {
            return [$"it is infeasible, not {plan.Outcome}"];
        }

        var wanted = expected.Nearest!;
        return
        [
            .. Same("all nearest values decided", true, nearest.IsDecided),
            .. Same("nearest budget", wanted.Budget, nearest.Budget.Value),
            .. Same("nearest maxPurchases", wanted.MaxPurchases, nearest.MaxPurchases.Value),
            .. Same("nearest maxBarlows", wanted.MaxBarlows, nearest.MaxBarlows.Value),
            .. Same("nearest allowedOverlaps", wanted.AllowedOverlaps, nearest.AllowedOverlaps.Value),
            .. Same("nearest maxPricePerItem", wanted.MaxPricePerItem, nearest.MaxPricePerItem.Value),
            .. Same("nearest maxItemMassGrams", wanted.MaxItemMassGrams, nearest.MaxItemMassGrams.Value),
            .. wanted.MustFrame.Zip(nearest.WidthDeg).SelectMany(pair => Same("nearest width", pair.First, pair.Second.Value)),
        ];
    }

    private static IEnumerable<string> Values(OracleResult expected, PurchaseProblem problem, Plan plan)
    {
        if (plan.Values is not { } values)
        {
            return [$"it is solvable, not {plan.Outcome}"];
        }

        var kit = Kit.Of(problem, plan.Purchases);
        var best = expected.BestSets.FirstOrDefault(set => set.Ids.SequenceEqual(plan.Purchases.Select(item => item.Id)));
        var figures = best?.Figures.Kit;
        return
        [
            .. Same("outcome", expected.BuyingNothingIsBest ? Outcome.NothingWorthwhile : Outcome.Optimal, plan.Outcome),
            .. Near("least largest step", expected.LeastLargestStep, values.LeastLargestStep.Ratio),
            .. Near("least mean excess", expected.LeastMeanExcess, values.LeastMeanExcess),
            .. expected.BestQuality is null && values.GreatestQuality is null ? [] : Near("greatest quality", expected.BestQuality, values.GreatestQuality),
            .. Near("preference", expected.BestPreferenceValue, values.Preference),
            .. Same("price", expected.BestPrice, kit.TotalPrice),
            .. Same("count", expected.BestCount, plan.Purchases.Length),
            .. Same("wish", expected.WishAsked ? expected.WishGranted : null, plan.Wish?.Granted),
            .. expected.WishAsked ? Near("field wished for", expected.WishedFieldDeg, plan.Wish?.TrueFieldDeg) : [],
            .. Same("telescopes that count", expected.StandingAside.Count, problem.Telescopes.Length - plan.Candidacy.Telescopes.Length),
            .. Same("one of the best sets", true, figures is not null),
            .. Near("largest step", figures?.LnLargestStep, kit.Figures.LargestStep.Ln),
            .. Near("mean mismatch", figures?.MeanMismatch, kit.Figures.MeanMismatch),
            .. Near("mean excess", figures?.MeanExcess, kit.Figures.MeanExcess),
            .. Near("served share", figures?.ServedShare, kit.Figures.ServedShare),
            .. Near("comfortable share", figures?.ComfortableShare, kit.Figures.ComfortableShare),
        ];
    }

    private static IEnumerable<string> Same<T>(string what, T expected, T actual) =>
        EqualityComparer<T>.Default.Equals(expected, actual) ? [] : [$"{what} is {expected}, not {actual}"];

    private static IEnumerable<string> Near(string what, double? expected, double? actual) =>
        Math.Abs((expected - actual) ?? double.PositiveInfinity) <= FigureTolerance ? [] : [$"{what} is {expected:R}, not {actual:R}"];

    private static string CodeOf(Excluded reason) => reason switch
    {
        Excluded.ByRequest => "excluded-by-request",
        Excluded.OutOfStock => "out-of-stock",
        Excluded.Reticle => "reticle",
        Excluded.OverBudget => "over-budget",
        Excluded.TooHeavy => "too-heavy",
        Excluded.BarrelTooWide => "barrel-too-wide",
        Excluded.OutsidePowerRange => "outside-power-range",
        Excluded.EyeReliefTooShort => "eye-relief-too-short",
        Excluded.ApparentFieldTooNarrow => "apparent-field-too-narrow",
        _ => "overlaps-owned",
    };
}
