namespace Evenstep.Planning.Tests.Oracle;

/// <summary>A point of the spending curve.</summary>
/// <param name="Price">In the catalogue's currency.</param>
/// <param name="LnStep">max(E, ln largest step).</param>
/// <param name="LeastMeanExcess">Of the sets of that price and step.</param>
/// <param name="Plans">Those of them with that excess, of which a fixed rule takes one.</param>
public sealed record OraclePoint(decimal Price, double LnStep, double LeastMeanExcess, IReadOnlyList<OraclePlan> Plans);

/// <summary>What every budget buys at best, found among all allowed sets.</summary>
public sealed class OracleSpending
{
    private const double LeastDepthOfKnee = 0.05;

    private readonly (OraclePlan Plan, double LnStep)[] allowed;

    private OracleSpending(OracleSearch search) =>
        allowed = [.. search.AllowedSets().Select(set => Exhaustive.Plan(search, set)).Select(plan => (plan, OracleElection.StepOf(search, plan)))];

    public static OracleSpending Of(OracleProblem problem) => new(new OracleSearch(problem));

    /// <summary>Every attainable step with its least price, what is enough counting alike; the cheapest first.</summary>
    public IReadOnlyList<OraclePoint> Frontier()
    {
        List<OraclePoint> points = [];
        foreach (decimal price in allowed.Select(set => set.Plan.Price).Distinct().Order())
        {
            double step = LeastLnStep(price)!.Value;
            if (points.Count == 0 || OracleTolerance.Under(step, points[^1].LnStep))
            {
                points.Add(PointOf(price, step));
            }
        }

        return points;
    }

    /// <summary>The least max(E, ln largest step) that so much money buys; null if no allowed set costs so little.</summary>
    public double? LeastLnStep(decimal money)
    {
        double? least = null;
        foreach ((OraclePlan plan, double lnStep) in allowed)
        {
            if (plan.Price <= money && !(least <= lnStep))
            {
                least = lnStep;
            }
        }

        return least;
    }

    /// <summary>Which point of a curve to suggest: the knee, as an index.</summary>
    /// <param name="points">The price of each point, the cheapest first, and the served share of the set that stands there.</param>
    public static int Suggested(IReadOnlyList<(decimal Price, double ServedShare)> points)
    {
        (decimal firstPrice, double firstShare) = points[0];
        (decimal lastPrice, double lastShare) = points[^1];
        if (points.Count == 1 || OracleTolerance.AtMost(lastShare, firstShare))
        {
            return points.Count - 1;
        }

        // From first to last the price goes from 0 to 1 and what is not served from 1 to 0; their sum is 1 on the chord.
        double[] depths =
        [
            .. points.Select(point => ((point.ServedShare - firstShare) / (lastShare - firstShare))
                - (double)((point.Price - firstPrice) / (lastPrice - firstPrice))),
        ];
        double deepest = depths.Max();
        return OracleTolerance.AtLeast(deepest, LeastDepthOfKnee)
            ? Array.FindIndex(depths, depth => OracleTolerance.AtLeast(depth, deepest))
            : points.Count - 1;
    }

    private OraclePoint PointOf(decimal price, double step)
    {
        OraclePlan[] plans =
            [.. allowed.Where(set => set.Plan.Price == price && OracleTolerance.AtMost(set.LnStep, step)).Select(set => set.Plan)];
        double least = plans.Min(plan => plan.Figures.Counting.MeanExcess);
        return new OraclePoint(
            price, step, least, [.. plans.Where(plan => OracleTolerance.AtMost(plan.Figures.Counting.MeanExcess, least))]);
    }
}
