namespace Evenstep.Planning.Tests.Oracle;

/// <summary>What every budget buys at best, found among all allowed sets.</summary>
public sealed class OracleSpending(IReadOnlyList<OraclePlan> allowed)
{
    public static OracleSpending Of(OracleProblem problem) => new(Exhaustive.AllowedSets(problem));

    /// <summary>Every attainable largest step, in logarithm, with its least price; the cheapest first.</summary>
    public IReadOnlyList<(decimal Price, double LnStep)> Frontier() =>
    [
        .. allowed.Select(plan => plan.Price).Distinct().Order()
            .Select(price => (Price: price, LnStep: LeastLnStep(price)!.Value))
            .Where(point => !allowed.Any(plan => plan.Price < point.Price && !OracleTolerance.Above(plan.Figures.Kit.LnLargestStep, point.LnStep))),
    ];

    /// <summary>The least logarithm of the largest step that so much money buys; null if no allowed set costs so little.</summary>
    public double? LeastLnStep(decimal money) =>
        allowed.Where(plan => plan.Price <= money).Min(plan => (double?)plan.Figures.Kit.LnLargestStep);
}
