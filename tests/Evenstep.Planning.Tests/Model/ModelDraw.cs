using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model;
using Evenstep.Planning.Solving.Model.Subproblems;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Model;

/// <summary>A random problem with its Barlows settled, as the model lays it out, and a random question.</summary>
internal sealed record ModelDraw(int Seed, Settled Settled)
{
    /// <summary>Away from the seeds of other tests.</summary>
    private const int FirstSeed = 800_000;
    private const int SetsOfBarlows = 3;
    private const int MostPlaces = 4;

    public static IEnumerable<ModelDraw> Some(int problems) =>
        from seed in Enumerable.Range(FirstSeed, problems)
        let problem = Bridge.ToProblem(RandomProblems.Make(seed))
        let candidacy = Candidacy.Of(problem)
        let space = PurchaseSpace.Of(problem, candidacy, new WorkBudget(Comparison.WorkLimit))
        let random = new Random(seed)
        from barlows in BarlowSets.Of(space, Limits.MostBarlows).All.Take(SetsOfBarlows)
        select new ModelDraw(seed, Settled.Of(space, barlows, QuestionOf(problem, candidacy.Telescopes, random))!);

    /// <summary>Every set of few places.</summary>
    public IEnumerable<int[]> AllSets() => Enumerable.Range(0, 1 << Math.Min(16, Settled.Choices.Length))
        .Where(bits => int.PopCount(bits) <= MostPlaces)
        .Select(bits => Enumerable.Range(0, 16).Where(place => (bits >> place & 1) == 1).ToArray());

    public IEnumerable<int[]> RandomSets(int count)
    {
        var random = new Random(Seed);
        int[] places = [.. Enumerable.Range(0, Settled.Choices.Length)];
        for (var i = 0; i < count; i++)
        {
            yield return [.. RandomProblems.InAnotherOrder(places, random)[..Math.Min(places.Length, random.Next(MostPlaces + 1))].Order()];
        }
    }

    /// <summary>Of a kit, over the telescopes that count.</summary>
    public LadderFigures FiguresOf(Kit kit) => kit.FiguresIn(Settled.Space.Telescopes);

    /// <summary>Of a kit, by the definitions alone.</summary>
    public double QualityOf(Kit kit) => Settled.Question.QualityMeasure!.Of(kit);

    /// <summary>The same by the definitions alone.</summary>
    public Kit KitOf(IEnumerable<int> places) => Kit.Of(Settled.Problem, ItemsOf(places));

    public ImmutableArray<Item> ItemsOf(IEnumerable<int> places) =>
        [.. Settled.Barlows.Select(barlow => barlow.Cheapest), .. places.Select(place => Settled.Choices[place].Cheapest)];

    /// <summary>Between nothing bought and nothing left to wish.</summary>
    private static Question QuestionOf(PurchaseProblem problem, ImmutableArray<int> telescopes, Random random)
    {
        var figures = Kit.Of(problem, []).FiguresIn(telescopes);
        var enough = problem.EnoughStep.Ln;
        var step = new Step(enough + (random.NextDouble() * Math.Max(0, figures.LargestStep.Ln - enough)));
        return Question.Anything
            .KeepingTo(step)
            .WithExcessUpTo(random.NextDouble() * figures.MeanExcess)
            .WithQualityFrom(QualityMeasure.Of(problem, telescopes, step), random.NextDouble());
    }
}
