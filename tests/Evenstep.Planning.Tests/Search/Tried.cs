using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

/// <summary>A random problem of which every allowed set is known, and a step to keep to.</summary>
internal sealed record Tried(Drawn Drawn, IReadOnlyDictionary<string, OraclePlan> Allowed, Step Step)
{
    /// <summary>Each with the step of one of its allowed sets, so that some sets only just keep to it.</summary>
    public static IEnumerable<Tried> Problems(int count) => Drawn.Problems(count).Select(drawn =>
    {
        var allowed = Exhaustive.AllowedSets(drawn.Oracle);
        var step = allowed.Count == 0 ? 1 : allowed[new Random(drawn.Seed).Next(allowed.Count)].Figures.Counting.LnLargestStep;
        return new Tried(drawn, allowed.ToDictionary(set => Noted.NameOf(set.Ids)), new Step(step));
    });

    public List<Noted> Met() => Descents.Run(Drawn, Step, new EverySet()).Sets;

    public IReadOnlyList<OraclePlan> KeepingToStep() =>
        [.. Allowed.Values.Where(set => Tolerance.AtMost(set.Figures.Counting.LnLargestStep, Step.Ln))];

    public Cost CostOf(OraclePlan set) =>
        Drawn.Ground.Pricing.Of([.. Drawn.Problem.Catalogue.Where(item => set.Ids.Contains(item.Id))]);
}
