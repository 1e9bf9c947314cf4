using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>
/// What is left to decide once the Barlows are settled: which eyepieces, zooms and reticle eyepieces. Each brings all its
/// views with it, over all telescopes, alone and through every Barlow, whatever else is bought.
/// </summary>
internal sealed class Settled
{
    private const long BytesPerReach = 24;
    private const long StepsPerView = 10;

    private readonly WorkBudget budget;
    private readonly Sights[] sights;
    private readonly SettledOverlaps overlaps;
    private readonly RatedReach[][] certain;
    private readonly RatedReach[][] reaches;
    private readonly int[][] starts;

    private Settled(PurchaseSpace space, ImmutableArray<Choice> barlows, Question question, Sights[] sights)
    {
        (Space, Barlows, Question, this.sights, budget) = (space, barlows, question, sights, space.Budget);
        var telescopes = space.Problem.Telescopes.Length;
        PurchasesLeft = PurchaseCountRule.Left(space.Problem, barlows.Length);
        MoneyLeft = Money.Min(BudgetRule.Most(space.Problem), question.MostTotalPrice) - barlows.Sum(barlow => barlow.LeastPrice);
        overlaps = new SettledOverlaps(space, sights);
        Choices = [.. Eligible()];
        certain = [.. Enumerable.Range(0, telescopes).Select(Certain)];
        starts = [.. Enumerable.Range(0, telescopes).Select(_ => new int[Choices.Length + 1])];
        reaches = [.. Enumerable.Range(0, telescopes).Select(Reaches)];
    }

    public PurchaseSpace Space { get; }

    public PurchaseProblem Problem => Space.Problem;

    public ImmutableArray<Choice> Barlows { get; }

    public Question Question { get; }

    public int AllowedOverlaps => Question.AllowedOverlaps ?? Problem.Limits.AllowedOverlaps;

    /// <summary>Besides the Barlows.</summary>
    public int PurchasesLeft { get; }

    /// <summary>The Barlows paid for at their cheapest.</summary>
    public Money MoneyLeft { get; }

    /// <summary>What may be bought with these Barlows; elsewhere told by their indices here.</summary>
    public ImmutableArray<Choice> Choices { get; }

    public int TelescopeCount => Problem.Telescopes.Length;

    /// <summary>No set with these Barlows is allowed, or one without them is as good.</summary>
    public bool IsFutile => PurchasesLeft < 0 || MoneyLeft < Money.Zero || overlaps.OfNothing > AllowedOverlaps
        || Choices.Count(choice => choice.IsDemanded) < Space.Choices.Count(choice => choice.IsDemanded && !choice.Representative.IsBarlow)
        || Barlows.Where((barlow, i) => !barlow.IsDemanded && sights[i + 1].IsEmpty).Any() && Problem.Demands.ReticleLeastPower is null
        || Question.AtMost.Any(one => Barlows.Sum(one.Measure.LeastOf) > one.Most);

    /// <summary>Null if there is no memory for the views.</summary>
    public static Settled? Of(PurchaseSpace space, ImmutableArray<Choice> barlows, Question question)
    {
        List<Sights?> sights = [space.Alone(), .. barlows.Select(space.Through)];
        var views = sights.Sum(one => (long)(one?.Count ?? 0));
        if (sights.Contains(null) || !space.Budget.TryHold(views * BytesPerReach))
        {
            return null;
        }

        // What is held is given back at once: the next set of Barlows takes it again, and there is only one at a time.
        space.Budget.Release(views * BytesPerReach);
        space.Budget.Spend(views * StepsPerView);
        return new Settled(space, barlows, question, [.. sights.OfType<Sights>()]);
    }

    /// <summary>Of what is owned, through the Barlows settled too.</summary>
    public ReadOnlySpan<RatedReach> CertainIn(int telescope) => certain[telescope];

    /// <summary>Of one choice, sorted by their beginnings.</summary>
    public ReadOnlySpan<RatedReach> ReachesIn(int telescope, int index) =>
        reaches[telescope].AsSpan(starts[telescope][index]..starts[telescope][index + 1]);

    /// <summary>Of all choices.</summary>
    public ReadOnlySpan<RatedReach> ReachesIn(int telescope) => reaches[telescope];

    /// <summary>Of one choice, alone or through what is owned.</summary>
    public ReadOnlySpan<Showing> PlainIn(int telescope, int index) => sights[0].Of(telescope, Choices[index]);

    /// <summary>Pairs of views that overlap and need one of the Barlows, and no other purchase.</summary>
    public int OverlapsOfNothing => overlaps.OfNothing;

    /// <summary>Pairs of views that overlap and need this choice, and no other but the Barlows.</summary>
    public int OverlapsOf(int index) => overlaps.Of(Choices[index]);

    /// <summary>Pairs of views that overlap and need both choices.</summary>
    public int OverlapsOf(int one, int other) => overlaps.Of(Choices[one], Choices[other]);

    /// <summary>The views of a choice.</summary>
    public IEnumerable<(int Telescope, Showing View)> ViewsOf(int index) => overlaps.ViewsOf(Choices[index]);

    public bool CertainlyShows(double widthDeg, int? telescope) => Any(telescope, widthDeg, (one, t) => one.OfOwned(t));

    public bool Shows(int index, double widthDeg, int? telescope) => Any(telescope, widthDeg, (one, t) => one.Of(t, Choices[index]));

    private bool Any(int? only, double widthDeg, Func<Sights, int, ReadOnlySpan<Showing>> views)
    {
        for (var t = only ?? 0; t <= (only ?? (TelescopeCount - 1)); t++)
        {
            foreach (var one in sights)
            {
                foreach (ref readonly var view in views(one, t))
                {
                    if (FramingRule.IsWide(view.TrueFieldDeg, widthDeg))
                    {
                        return true;
                    }
                }
            }
        }

        return false;
    }

    private IEnumerable<Choice> Eligible()
    {
        Choice[] oculars = [.. Space.Choices.Where(choice => !choice.Representative.IsBarlow)];
        Choice[] demanded = [.. oculars.Where(choice => choice.IsDemanded)];
        var (money, purchases) = (MoneyLeft - demanded.Sum(choice => choice.LeastPrice), PurchasesLeft - demanded.Length);
        var overlapsLeft = AllowedOverlaps - overlaps.OfNothing;
        if (money < Money.Zero || purchases < 0 || overlapsLeft < 0)
        {
            return [];
        }

        return oculars.Where(choice => (choice.IsDemanded || (purchases > 0 && choice.LeastPrice <= money)) && overlaps.Of(choice) <= overlapsLeft);
    }

    private RatedReach[] Certain(int telescope)
    {
        List<RatedReach> all = [];
        foreach (var one in sights)
        {
            foreach (ref readonly var view in one.OfOwned(telescope))
            {
                all.Add(RatedReach.Of(view));
            }
        }

        return [.. all];
    }

    private RatedReach[] Reaches(int telescope)
    {
        List<RatedReach> all = [];
        for (var index = 0; index < Choices.Length; index++)
        {
            var first = all.Count;
            foreach (var one in sights)
            {
                foreach (ref readonly var view in one.Of(telescope, Choices[index]))
                {
                    all.Add(RatedReach.Of(view));
                }
            }

            all.Sort(first, all.Count - first, ByBeginning);
            starts[telescope][index + 1] = all.Count;
        }

        return [.. all];
    }

    private static readonly IComparer<RatedReach> ByBeginning = Comparer<RatedReach>.Create(RatedReach.ByBeginning);
}
