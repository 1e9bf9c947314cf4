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
    public const string Parfocal = "parfocal";
    public const string TelescopeNotServed = "telescope-not-served";
    public const string NothingToLookThrough = "nothing-to-look-through";

    public const string LargerBudget = "larger-budget";

    /// <summary>Of an offer that the money left does not suffice for.</summary>
    public const string BeyondBudget = "beyond-budget";

    /// <summary>Of an offer where no budget was named: it is the greatest there is.</summary>
    public const string NoBudget = "no-budget";

    /// <summary>Where no two eyepieces are known to be parfocal.</summary>
    public const string NoneParfocal = "none";

    /// <summary>Where nothing for sale would help.</summary>
    public const string NothingForSale = "nothing-for-sale";

    /// <summary>Every code that <see cref="Of(PurchaseProblem, Plan)"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes =
        [NothingToLookThrough, LargerBudget, TelescopeNotServed, WideViewNotGranted, WiderViewCosts, ZoomInstead, NotParfocal, Parfocal];

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
            .. kit.Figures.HasViews ? ImmutableArray<Remark>.Empty : [OfNothing(kit)],
            .. Maybe(Advice.LargerBudget.Beyond(kit, plan.Candidacy.Telescopes, budget)?.Remark),
            .. NotServed(kit.Problem, plan.Candidacy.Telescopes),
            .. OfTheWish(kit.Problem, plan),
            .. Maybe(WiderView.Beyond(kit, budget)?.Remark),
            .. Maybe(ZoomInPlace.Of(kit)?.Remark),
            .. ParfocalNotes.Of(kit),
        ];
    }

    /// <summary>Whether the money is there for an offer.</summary>
    internal static string? VariantFor(Item offered, decimal? moneyLeft) => moneyLeft is null ? NoBudget : offered.Price > moneyLeft ? BeyondBudget : null;

    /// <summary>What the budget leaves after some money is spent; null where no budget was named.</summary>
    internal static decimal? MoneyLeft(PurchaseProblem problem, decimal spent) =>
        problem.Limits.Budget >= (decimal)Bounds.Budget.Most ? null : problem.Limits.Budget - spent;

    private static ImmutableArray<Remark> Maybe(Remark? remark) => remark is null ? [] : [remark];

    /// <summary>What the cheapest item costs that alone, the budget aside, would give a usable view.</summary>
    private static Remark OfNothing(Kit kit)
    {
        var limits = kit.Problem.Limits;
        var rich = kit.Problem with { Limits = limits with { Budget = (decimal)Bounds.Budget.Most } };
        var cheapest = Candidacy.Of(rich).Candidates
            .OrderBy(item => item.ExactPrice).ThenBy(item => item.Id, StringComparer.Ordinal)
            .FirstOrDefault(item => Kit.Of(rich, [item]).Figures.HasViews);
        return new Remark(NothingToLookThrough,
        [
            RemarkValue.Of("itemId", cheapest?.Id),
            RemarkValue.Of("name", cheapest),
            RemarkValue.Of("price", cheapest?.Price),
        ])
        {
            Variant = cheapest is null ? NothingForSale : null,
        };
    }

    /// <summary>Telescopes in which nothing owned or for sale can make a usable view, so that they stand aside.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="telescopes">Those that decide, by their indices: see <see cref="Candidacy.Telescopes"/>.</param>
    public static IEnumerable<Remark> NotServed(PurchaseProblem problem, ImmutableArray<int> telescopes) =>
        problem.Telescopes.Where((_, t) => !telescopes.Contains(t))
            .Select(one => new Remark(TelescopeNotServed, [RemarkValue.Of("telescope", one.Telescope.Name)]));

    private static ImmutableArray<Remark> OfTheWish(PurchaseProblem problem, Plan plan) =>
        plan.Wish is { Granted: false } wish ? Maybe(WhyNotGranted(problem, plan, wish)) : [];

    /// <summary>
    /// An item that alone would grant the wish is a candidate, for the wish is measured by the widest of them. If it is not
    /// bought, then either nothing may be bought, or no set with it is as even and meets all that is asked.
    /// </summary>
    private static Remark? WhyNotGranted(PurchaseProblem problem, Plan plan, WideViewWish wish)
    {
        var item = plan.Candidacy.Candidates
            .Where(candidate => ShowsAlone(problem, candidate, wish.TrueFieldDeg))
            .OrderBy(candidate => candidate.ExactPrice).ThenBy(candidate => candidate.Id, StringComparer.Ordinal)
            .FirstOrDefault();
        return item is null ? null : new Remark(WideViewNotGranted,
        [
            RemarkValue.Degrees("trueFieldDeg", wish.TrueFieldDeg),
            .. RemarkValue.ItemOf(item),
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
}
