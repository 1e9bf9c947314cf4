using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// The cheapest further item that, bought beside a kit's purchases, gives a much wider view than any of the kit, and with which
/// they still break no rule, the budget and the number of purchases aside, nor has it a drawback that they have not.
/// </summary>
/// <param name="Item">What to buy as well; ties go to the first id.</param>
/// <param name="TrueFieldDeg">The kit's widest true field, in degrees.</param>
/// <param name="WiderFieldDeg">The widest with the item.</param>
/// <param name="Telescope">The name of the telescope that it is the widest in.</param>
/// <param name="MoneyLeft">What the budget leaves after the kit's purchases; null where none was named.</param>
public sealed record WiderView(Item Item, double TrueFieldDeg, double WiderFieldDeg, string Telescope, decimal? MoneyLeft)
{
    /// <summary>The value that tells an apparent field that was assumed.</summary>
    public const string AssumedField = "assumedApparentFieldDeg";

    /// <summary>The value that tells an eye relief that was assumed.</summary>
    public const string AssumedEyeRelief = "assumedEyeReliefMm";

    /// <summary>To whom wide views matter, beside those who name nothing in particular: common practice, no source.</summary>
    private static readonly ImmutableArray<Interest> ForWideViews = [Interest.LargeNebulae, Interest.StarClusters];

    /// <summary>So many views are worked out for this at most, over all items that are judged: with a large kit only the cheapest few items are.</summary>
    private const int MostViewsJudged = 100_000;

    internal Remark Remark => new(PlanNotes.WiderViewCosts,
    [
        .. RemarkValue.ItemOf(Item),
        RemarkValue.Of("price", Item.Price),
        RemarkValue.Of("moneyLeft", MoneyLeft),
        RemarkValue.Degrees("trueFieldDeg", TrueFieldDeg),
        RemarkValue.Degrees("widerFieldDeg", WiderFieldDeg),
        RemarkValue.Of("telescope", Telescope),
        .. Assumed(),
    ])
    {
        Variant = PlanNotes.VariantFor(Item, MoneyLeft),
    };

    /// <summary>Null if there is none, if nothing can be seen through the kit, or if wide views do not matter to the observer.</summary>
    /// <param name="kit">What there is.</param>
    /// <param name="budget">Sees cancellation; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static WiderView? Beyond(Kit kit, WorkBudget? budget = null)
    {
        var observes = kit.Problem.Observer.Observes;
        if (kit.WidestFieldDeg() is not { } widest || !(observes.IsEmpty || observes.Any(ForWideViews.Contains)))
        {
            return null;
        }

        var roomy = Roomy(kit);
        var judged = Math.Max(1, MostViewsJudged / Math.Max(1, kit.Ladders.Sum(ladder => ladder.Views.Length)));
        return WiderItems(roomy, kit, widest).Take(judged).Where(item => FitsBeside(item, roomy, kit, budget))
            .Select(item => With(item, widest, Kit.Of(roomy, kit.Purchases.Add(item)), kit)).FirstOrDefault();
    }

    private static WiderView With(Item item, double widest, Kit with, Kit kit)
    {
        var wider = with.Ladders.SelectMany(ladder => ladder.Usable).MaxBy(view => view.View.TrueFieldDeg)!.View;
        return new WiderView(item, widest, wider.TrueFieldDeg, wider.Telescope.Telescope.Name, PlanNotes.MoneyLeft(kit.Problem, kit.TotalPrice));
    }

    /// <summary>Figures of the item that nobody stated.</summary>
    private IEnumerable<RemarkValue> Assumed()
    {
        if (Item.Optic is Eyepiece { IsApparentFieldAssumed: true } narrow)
        {
            yield return RemarkValue.Degrees(AssumedField, narrow.ApparentFieldDeg);
        }

        if (Item.Optic is Eyepiece { IsEyeReliefAssumed: true } near)
        {
            yield return RemarkValue.Millimetres(AssumedEyeRelief, near.EyeReliefMm);
        }
    }

    /// <summary>The problem with money and purchases enough for one more.</summary>
    private static PurchaseProblem Roomy(Kit kit)
    {
        var limits = kit.Problem.Limits;
        return kit.Problem with { Limits = limits with { Budget = (decimal)Bounds.Budget.Most, MaxPurchases = kit.Purchases.Length + 1 } };
    }

    /// <summary>Those alone that are much wider, the cheapest first. Nearly always one of the first will do, so
    /// that the others need not be judged.</summary>
    private static IEnumerable<Item> WiderItems(PurchaseProblem roomy, Kit kit, double widest) => kit.Problem.Catalogue.ByPrice
        .Where(item => PlanNotes.ShowsAlone(roomy, item, Overlap.WiderFieldRatio * widest) && !kit.Purchases.Contains(item)
            && OfferedDrawbacks.AreThoseOf(kit, item));

    private static bool FitsBeside(Item item, PurchaseProblem roomy, Kit kit, WorkBudget? budget)
    {
        budget?.Look();
        return Candidacy.Of(roomy, [item]).Exclusions.IsEmpty && !Breaches.Of(Kit.Of(roomy, kit.Purchases.Add(item))).Any();
    }
}
