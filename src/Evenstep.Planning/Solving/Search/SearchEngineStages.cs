using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The stages after the first, each of which keeps to what those before it allow.</summary>
public sealed partial class SearchEngine
{
    private Selection LeastMeanExcess(Selection known)
    {
        var excess = first.Enough is not null ? 0 : Kit.Of(Problem, known.Items).FiguresIn(ground.Candidacy.Telescopes).MeanExcess;
        var least = second = new LeastExcess(known, excess);
        var unfinished = ShortLooks(least);
        if (unfinished.Count > 0 && !least.IsReached)
        {
            least.Floor = benches.ByPowers.Min(bench => bench.LeastExcess);
            LongLooks(unfinished, benches, first.Allowed, least);
        }

        leastExcess = effort.IsSpent ? null : Math.Max(0, least.Best);
        return least.BestSet;
    }

    private (Selection Best, double Quality) GreatestQuality(StageValues values, Selection known)
    {
        var measure = QualityMeasure.Of(Problem, ground.Candidacy.Telescopes, values.LargestStepAllowed);
        foreach (var node in chain)
        {
            node.Measure(measure);
        }

        var knownQuality = measure.Of(Kit.Of(Problem, known.Items));
        var most = third = new MostQuality(values.MeanExcessAllowed, known, knownQuality);
        var unfinished = ShortLooks(most);
        if (unfinished.Count > 0)
        {
            most.Ceiling = benches.ByPowers.Max(bench => bench.MostQuality(measure));
            LongLooks(unfinished, benches, first.Allowed, most);
        }

        var required = most.Best - StageValues.QualityLeeway;
        var isKnownCheaper = ground.Pricing.Of(known.Items) < ground.Pricing.Of(most.BestSet.Items);
        return (isKnownCheaper && knownQuality >= required ? known : most.BestSet, most.Best);
    }

    private Selection Cheapest(StageValues values, Selection known)
    {
        var priceDecides = Problem.Preferences.Prefer is not (Prefer.LightWeight or Prefer.Parfocal);
        var least = fourth = new LeastCost(
            values.MeanExcessAllowed, values.QualityRequired ?? double.NegativeInfinity, known, ground.Pricing.Of(known.Items), priceDecides);
        if (first.Enough is { } knownOn)
        {
            var bench = benches.Of(knownOn);
            Descend(bench, values.LargestStepAllowed, least, bench.Reticle.Cheapest, effort.Short(NodesOfShortLook));
        }

        if (!priceDecides)
        {
            LookThrough(benches, values.LargestStepAllowed, least);
            return least.Cheapest;
        }

        // What costs more than the best set known is in no better one.
        benches.Forget();
        using var left = new Benches(ground.UpTo(least.Best.Price));
        LookThrough(left, values.LargestStepAllowed, least);
        return least.Cheapest;
    }
}
