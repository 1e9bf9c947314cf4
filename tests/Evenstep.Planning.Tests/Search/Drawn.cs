using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

/// <summary>A random problem as the search lays it out.</summary>
internal sealed record Drawn(int Seed, OracleProblem Oracle, PurchaseProblem Problem, Groundwork Ground)
{
    /// <summary>Away from the seeds of other tests.</summary>
    private const int FirstSeed = 700_000;

    /// <summary>So many problems, without those that demand what is no candidate, which no search begins with.</summary>
    public static IEnumerable<Drawn> Problems(int count) => Enumerable.Range(FirstSeed, count).Select(Make).OfType<Drawn>();

    /// <summary>Every way to settle the Barlows that leaves the limits kept.</summary>
    public IEnumerable<Bench> Benches() => BarlowSet.All(Ground).Select(set => new Bench(Ground, set)).Where(bench => bench.IsPossible);

    /// <summary>Random sets of the places of offered oculars.</summary>
    public IEnumerable<int[]> SetsOfPlaces(int sets, int most)
    {
        var random = new Random(Seed);
        int[] places = [.. Enumerable.Range(0, Ground.Oculars.Length)];
        for (var i = 0; i < sets; i++)
        {
            yield return RandomProblems.InAnotherOrder(places, random)[..Math.Min(places.Length, random.Next(most + 1))];
        }
    }

    /// <summary>What the kit is with a bench's settled items, the first ware at each place, and more.</summary>
    public Kit KitOf(Bench bench, IEnumerable<int> places, params IEnumerable<Item> more) =>
        Kit.Of(Problem, [.. bench.Settled, .. places.Select(place => Ground.Oculars[place].Item), .. more]);

    /// <summary>The figures that decide: a telescope that nothing serves stands aside.</summary>
    public LadderFigures FiguresOf(Kit kit) => kit.FiguresIn(Ground.Candidacy.Telescopes);

    /// <summary>The measure of quality, with a step allowed that is this many times what is enough, in logarithm.</summary>
    public QualityMeasure Measure(double steps = 1.5) => QualityMeasure.Of(Problem, Ground.Candidacy.Telescopes, Problem.EnoughStep.Widened(steps));

    private static Drawn? Make(int seed)
    {
        var oracle = RandomProblems.Make(seed);
        var problem = Bridge.ToProblem(oracle);
        var candidacy = Candidacy.Of(problem);
        var candidates = candidacy.Candidates.Select(item => item.Id).ToHashSet();
        return problem.Demands.MustInclude.All(candidates.Contains)
            ? new Drawn(seed, oracle, problem, new Groundwork(problem, candidacy, new WorkBudget(Comparison.WorkLimit)))
            : null;
    }
}
