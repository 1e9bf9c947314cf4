using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What an adviser remarks on a plan: each a statement that is true of the problem, worked out without solving again.</summary>
public static class PlanNotes
{
    public const string WideViewNotGranted = "wide-view-not-granted";
    public const string WiderViewCosts = "wider-view-costs";
    public const string ZoomInstead = "zoom-instead";
    public const string NotParfocal = "not-parfocal";

    /// <summary>Every code that <see cref="Of(PurchaseProblem, Plan)"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes =
        [WideViewNotGranted, WiderViewCosts, ZoomInstead, NotParfocal];

    /// <summary>The notes on a plan; none where nothing is allowed.</summary>
    public static ImmutableArray<Remark> Of(PurchaseProblem problem, Plan plan)
    {
        if (plan.Outcome == Outcome.Infeasible)
        {
            return [];
        }

        return Of(Kit.Of(problem, plan.Purchases), plan);
    }

    /// <summary>The same of the plan's kit.</summary>
    /// <param name="kit">With the plan's purchases.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="budget">Sees cancellation; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ImmutableArray<Remark> Of(Kit kit, Plan plan, WorkBudget? budget = null)
    {
        if (plan.Outcome == Outcome.Infeasible)
        {
            return [];
        }

        budget?.Look();
        return
        [
            .. OfTheWish(kit.Problem, plan),
            .. Maybe(WiderView.Beyond(kit, budget)?.Remark),
            .. Maybe(ZoomInPlace.Of(kit)?.Remark),
            .. OfFocus(kit),
        ];
    }

    private static ImmutableArray<Remark> Maybe(Remark? remark) => remark is null ? [] : [remark];

    private static ImmutableArray<Remark> OfTheWish(PurchaseProblem problem, Plan plan) =>
        plan.Wish is { Granted: false } wish ? [WhyNotGranted(problem, plan, wish)] : [];

    /// <summary>
    /// An item that alone would grant the wish is a candidate, for the wish is measured by the widest of them. So bought alone it
    /// keeps to the budget and repeats too little to matter; if no allowed set holds it, then either nothing may be bought, or
    /// what the request demands besides leaves no room for it.
    /// </summary>
    private static Remark WhyNotGranted(PurchaseProblem problem, Plan plan, WideViewWish wish)
    {
        var item = plan.Candidacy.Candidates
            .Where(candidate => ShowsAlone(problem, candidate, wish.TrueFieldDeg))
            .OrderBy(candidate => candidate.ExactPrice).ThenBy(candidate => candidate.Id, StringComparer.Ordinal)
            .First();
        return new Remark(WideViewNotGranted,
        [
            RemarkValue.Degrees("trueFieldDeg", wish.TrueFieldDeg),
            RemarkValue.Of("itemId", item.Id),
            RemarkValue.Of("name", item.Name ?? item.Id),
            RemarkValue.Of("price", item.Price),
            RemarkValue.Degrees("itemFieldDeg", problem.Telescopes.Max(telescope => FieldAlone(problem, telescope, item) ?? 0)),
            RemarkValue.Of("maxPurchases", problem.Limits.MaxPurchases),
        ]);
    }

    /// <summary>Whether an item for sale alone has a usable view, in some telescope, that shows at least so much at once.</summary>
    internal static bool ShowsAlone(PurchaseProblem problem, Item item, double leastFieldDeg)
    {
        foreach (var telescope in problem.Telescopes)
        {
            if (FieldAlone(problem, telescope, item) is { } field && Tolerance.AtLeast(field / leastFieldDeg, 1))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The true field, in degrees, of an item for sale alone; null unless it gives a usable view.</summary>
    private static double? FieldAlone(PurchaseProblem problem, TelescopeInUse telescope, Item item) =>
        item.Ocular is { } ocular && View.Of(telescope, ocular) is { } view
        && view.NotUsableBecause(problem.Observer, problem.Preferences.LeastApparentFieldDeg, bought: true) is null
            ? view.TrueFieldDeg
            : null;

    /// <summary>Purchases of a known parfocal group that none of the owned eyepieces and zooms belongs to, though some of those
    /// belong to a known one.</summary>
    private static IEnumerable<Remark> OfFocus(Kit kit)
    {
        var ownedGroups = kit.Problem.Owned.Where(item => item.Ocular is not null).Select(item => item.ParfocalGroup).OfType<string>().ToHashSet();
        ImmutableArray<Item> apart =
            [.. kit.Purchases.Where(item => item.Ocular is not null && item.ParfocalGroup is { } group && !ownedGroups.Contains(group))];
        return ownedGroups.Count == 0 || apart.IsEmpty ? [] : [new Remark(NotParfocal, [.. RemarkValue.ItemsOf(apart)])];
    }
}
