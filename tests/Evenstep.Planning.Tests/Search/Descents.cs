using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Agreement;
using Path = Evenstep.Planning.Solving.Search.Path;

namespace Evenstep.Planning.Tests.Search;

/// <summary>What a descent came past.</summary>
internal sealed record Noted(Item[] Items, Cost Cost, double Excess, double LnLargestStep)
{
    public string Name => NameOf(Items.Select(item => item.Id));

    public static string NameOf(IEnumerable<string> ids) => string.Join(' ', ids.Order(StringComparer.Ordinal));
}

/// <summary>Gives nothing up, notes every set it comes past, and always asks for more.</summary>
internal sealed class EverySet : Goal
{
    public List<Noted> Sets { get; } = [];

    public override bool WantsEveryWare => true;

    public override bool IsHopeless(Node node, Path path) => false;

    public override bool IsWorthTrying(in Prospects prospects, in Option option, Cost cost) => true;

    public override bool Note(Node node, Path path)
    {
        Sets.Add(new Noted([.. path.Select().Items], path.Cost, node.Excess, node.LargestStep().Ln));
        return true;
    }
}

internal static class Descents
{
    public const long NoEnd = long.MaxValue;

    /// <summary>The same goal for every bench of a problem and every reticle eyepiece that would do.</summary>
    public static T Run<T>(
        Drawn drawn, Step largestStep, T goal, long nodes = NoEnd, QualityMeasure? measure = null, CancellationToken cancellation = default)
        where T : Goal
    {
        var effort = new Effort(nodes, new WorkBudget(Comparison.WorkLimit, cancellation));
        foreach (var bench in drawn.Benches())
        {
            foreach (var reticle in bench.Reticle.ToTry)
            {
                var chain = Node.Chain(drawn.Ground);
                if (measure is not null)
                {
                    Array.ForEach(chain, node => node.Measure(measure));
                }

                chain[0].Begin(bench, bench.Reticle.ExtraPrice(reticle));
                if (chain[0].MoneyLeft >= Money.Zero)
                {
                    var path = new Path(drawn.Ground.Pricing, reticle is null ? bench.Settled : bench.Settled.Add(reticle));
                    Descent.Run(bench, chain, largestStep, goal, effort, path);
                }
            }
        }

        return goal;
    }
}
