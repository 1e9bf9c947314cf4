using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Where the budget buys nothing that helps: the cheapest item above it with which clearly more of the useful powers are served.</summary>
/// <param name="Item">The item; ties go to the first id.</param>
/// <param name="ServedPercent">What is served so far.</param>
/// <param name="ServedWithIt">What would be served with it, in percent.</param>
public sealed record LargerBudget(Item Item, double ServedPercent, double ServedWithIt)
{
    /// <summary>This much more is clearly more, in percent of the useful powers: common practice, no source.</summary>
    public const double ClearlyMore = 5;

    /// <summary>So many views are worked out for this at most: with a large kit only the cheapest few items are judged.</summary>
    private const int MostViewsJudged = 50_000;

    internal Remark Remark => new(PlanNotes.LargerBudget,
    [
        .. RemarkValue.ItemOf(Item),
        RemarkValue.Of("price", Item.Price),
        RemarkValue.Percent("servedPercent", ServedPercent),
        RemarkValue.Percent("servedWithIt", ServedWithIt),
    ]);

    /// <summary>Null if there is none, if something is bought, or if nothing can be seen through what is owned.</summary>
    /// <param name="kit">The plan's.</param>
    /// <param name="telescopes">The telescopes that count, by their indices.</param>
    /// <param name="budget">Sees cancellation; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static LargerBudget? Beyond(Kit kit, ImmutableArray<int> telescopes, WorkBudget? budget)
    {
        if (!kit.Purchases.IsEmpty || !kit.Figures.HasViews)
        {
            return null;
        }

        var rich = kit.Problem with { Limits = kit.Problem.Limits with { Budget = (decimal)Bounds.Budget.Most } };
        var before = 100 * kit.FiguresIn(telescopes).ServedShare;
        var judged = Math.Max(1, MostViewsJudged / Math.Max(1, kit.Ladders.Sum(ladder => ladder.Views.Length)));
        return kit.Problem.Catalogue.ByPrice.Where(item => item.Price > kit.Problem.Limits.Budget && !item.IsReticle)
            .Take(judged)
            .Select(item => With(item, rich, before, telescopes, budget))
            .FirstOrDefault(one => one is not null);
    }

    private static LargerBudget? With(Item item, PurchaseProblem rich, double before, ImmutableArray<int> telescopes, WorkBudget? budget)
    {
        budget?.Look();
        var kit = Kit.Of(rich, [item]);
        var after = 100 * kit.FiguresIn(telescopes).ServedShare;
        return Tolerance.AtLeast(after - before, ClearlyMore) && Candidacy.Of(rich, [item]).Exclusions.IsEmpty && !Breaches.Of(kit).Any()
            ? new LargerBudget(item, before, after)
            : null;
    }
}
