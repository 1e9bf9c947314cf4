using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>Asks questions of every set of Barlows in turn.</summary>
internal sealed class Finder(PurchaseSpace space, int usefulBarlows)
{
    private readonly BarlowSets sets = BarlowSets.Of(space, usefulBarlows);
    private readonly RecentSets recent = new();

    public PurchaseProblem Problem => space.Problem;

    /// <summary>The telescopes that count, by their indices.</summary>
    public ImmutableArray<int> Telescopes => space.Telescopes;

    public ImmutableArray<ImmutableArray<Choice>> Sets => sets.All;

    /// <summary>Whether what no set of Barlows has, nothing has.</summary>
    public bool IsComplete => sets.IsComplete;

    /// <summary>Whether work or memory is at its end.</summary>
    public bool IsSpent => space.Budget.IsSpent;

    public static Finder Of(PurchaseSpace space, int usefulBarlows = Limits.MostBarlows) => new(space, usefulBarlows);

    /// <summary>Lets what is wrong with a set that is known already begin each master.</summary>
    public void Remember(ImmutableArray<Item> purchases)
    {
        var ids = purchases.Select(item => item.Id).ToHashSet();
        recent.Add([.. space.Choices.Where(choice => choice.Items.Any(item => ids.Contains(item.Id))).Select(choice => choice.Index)]);
    }

    /// <summary>Whether what no affordable set of Barlows has, nothing has.</summary>
    public bool CanDecide(Question question) => AffordableIn(question).IsComplete;

    /// <summary>Any set within the question.</summary>
    public Answer Any(Question question)
    {
        var affordable = AffordableIn(question);
        var answer = Any(affordable.All, question);
        return answer.IsNone && !affordable.IsComplete ? Answer.Undecided : answer;
    }

    /// <summary>Any set within the question, with one of these sets of Barlows.</summary>
    public Answer Any(IEnumerable<ImmutableArray<Choice>> sets, Question question)
    {
        var isDecided = true;
        foreach (var barlows in sets)
        {
            var answer = With(barlows, question);
            if (answer.Purchases is not null)
            {
                return answer;
            }

            isDecided &= answer.IsDecided;
            if (IsSpent)
            {
                return Answer.Undecided;
            }
        }

        return isDecided ? Answer.None : Answer.Undecided;
    }

    /// <summary>The set of least measure within the question.</summary>
    public Answer Least(Question question, Measure measure, ImmutableArray<Item>? known = null)
    {
        var affordable = AffordableIn(known is { } dearest && measure.RanksByPrice ? question with { MostTotalPrice = PriceOf(dearest) } : question);
        var (best, isDecided) = (known, affordable.IsComplete);
        foreach (var barlows in affordable.All)
        {
            var better = question with { Least = measure };
            if (best is { } one)
            {
                better = better.Below(measure, measure.Of(one) - 1) with { MostTotalPrice = measure.RanksByPrice ? PriceOf(one) : question.MostTotalPrice };
            }

            var answer = With(barlows, better);
            best = answer.Purchases ?? best;
            isDecided &= answer.IsDecided && !IsSpent;
        }

        return new Answer(best, isDecided);
    }

    /// <summary>Of every view that some set may have, in one telescope or in any; null if there is no memory for them.</summary>
    public HashSet<double>? TrueFieldsDeg(int? telescope) => space.TrueFieldsDeg(telescope);

    /// <summary>A set with these Barlows within the question.</summary>
    public Answer With(ImmutableArray<Choice> barlows, Question question)
    {
        if (IsSpent || Settled.Of(space, barlows, question) is not { } settled)
        {
            return Answer.Undecided;
        }

        return new CutLoop(settled, recent).Run();
    }

    private static Money PriceOf(ImmutableArray<Item> purchases) => purchases.Sum(item => item.ExactPrice);

    /// <summary>Where less money is left than the budget, fewer sets of Barlows are to be asked.</summary>
    private BarlowSets AffordableIn(Question question) =>
        question.MostTotalPrice == Money.MaxValue ? sets : BarlowSets.Of(space, usefulBarlows, question.MostTotalPrice);
}
