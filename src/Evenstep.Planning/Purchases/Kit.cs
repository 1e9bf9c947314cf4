using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>What the observer owns together with what is bought, as seen in each telescope.</summary>
public sealed class Kit
{
    private Kit(PurchaseProblem problem, ImmutableArray<Item> purchases, ImmutableArray<Ladder> ladders)
    {
        Problem = problem;
        Purchases = purchases;
        Ladders = ladders;
        Figures = LadderFigures.Of([.. ladders.Select(ladder => ladder.Figures)]);
    }

    public PurchaseProblem Problem { get; }

    public ImmutableArray<Item> Purchases { get; }

    public IEnumerable<Item> Items => Problem.Owned.Concat(Purchases);

    /// <summary>One a telescope, in the problem's order.</summary>
    public ImmutableArray<Ladder> Ladders { get; }

    public LadderFigures Figures { get; }

    /// <summary>The same figures, over some of the telescopes only.</summary>
    /// <param name="telescopes">By their indices; at least one.</param>
    public LadderFigures FiguresIn(ImmutableArray<int> telescopes) => telescopes.Length == Ladders.Length
        ? Figures
        : LadderFigures.Of([.. telescopes.Select(t => Ladders[t].Figures)]);

    public decimal TotalPrice => Purchases.Sum(item => item.Price);

    public static Kit Of(PurchaseProblem problem, IEnumerable<Item> purchases)
    {
        ImmutableArray<Item> bought = [.. purchases];
        return new Kit(problem, bought, [.. problem.Telescopes.Select(telescope => LadderOf(problem, telescope, bought))]);
    }

    /// <summary>The kit that is left when one item of it, owned or bought, is taken away.</summary>
    public Kit Without(Item item) =>
        new(Problem with { Owned = Problem.Owned.Remove(item) }, Purchases.Remove(item), [.. Ladders.Select(ladder => ladder.Without(item))]);

    /// <summary>The pairs of views, over all telescopes, that overlap and in which a purchase takes part.</summary>
    public IEnumerable<OverlappingPair> OverlapPairsThroughPurchases() =>
        Ladders.SelectMany(ladder => ladder.Overlaps().Where(pair => pair.NeedsPurchase));

    /// <summary>How many such pairs there are.</summary>
    public int OverlapsThroughPurchases() => OverlapPairsThroughPurchases().Count();

    /// <summary>The widest true field, in degrees, of a usable view in one telescope or in any; null if there is none.</summary>
    public double? WidestFieldDeg(int? telescopeIndex = null)
    {
        var ladders = telescopeIndex is { } index ? Ladders.Slice(index, 1) : Ladders;
        return ladders.SelectMany(ladder => ladder.Usable).Max(view => (double?)view.View.TrueFieldDeg);
    }

    /// <summary>The highest power, in any telescope, of a reticle eyepiece of the kit, alone or through a Barlow of the
    /// kit; null if no reticle eyepiece fits a telescope.</summary>
    public double? ReticlePower()
    {
        Item[] barlows = [.. Items.Where(item => item.IsBarlow)];
        return Items.Where(item => item.IsReticle).Max(item => Reticle.HighestPower(item, barlows, Problem.Telescopes));
    }

    private static Ladder LadderOf(PurchaseProblem problem, TelescopeInUse telescope, ImmutableArray<Item> bought)
    {
        // One that is owned may be bought once more: each of the two is judged by itself.
        (Item Item, bool IsBought)[] all = [.. problem.Owned.Select(item => (item, false)), .. bought.Select(item => (item, true))];
        List<KitView> views = [];
        foreach (var (eyepiece, isBought) in all.Where(one => one.Item.Ocular is not null))
        {
            KitViews.Add(problem, telescope, eyepiece, isBought, null, isBought, views);
            foreach (var (barlow, isBarlowBought) in all.Where(one => one.Item.IsBarlow))
            {
                KitViews.Add(problem, telescope, eyepiece, isBought, barlow, isBarlowBought, views);
            }
        }

        views.Sort(ByPower);
        return new Ladder(telescope, [.. views], problem.MismatchLimits, problem.LeastStep);
    }

    private static int ByPower(KitView a, KitView b)
    {
        var order = a.View.Power.CompareTo(b.View.Power);
        order = order != 0 ? order : string.CompareOrdinal(a.Eyepiece.Id, b.Eyepiece.Id);
        order = order != 0 ? order : string.CompareOrdinal(a.Barlow?.Id, b.Barlow?.Id);
        return order != 0 ? order : a.View.Factor.CompareTo(b.View.Factor);
    }
}

/// <summary>The views that items make, judged for the problem's observer.</summary>
public static class KitViews
{
    private static readonly ImmutableArray<double> NoBarlow = [1];

    /// <summary>The view of an eyepiece or zoom alone; none where the barrel does not fit.</summary>
    public static IEnumerable<KitView> Alone(PurchaseProblem problem, TelescopeInUse telescope, Item eyepiece, bool bought) =>
        Of(problem, telescope, eyepiece, bought, barlow: null, bought);

    /// <summary>The views of an eyepiece or zoom through a Barlow, one a factor.</summary>
    public static IEnumerable<KitView> Through(
        PurchaseProblem problem, TelescopeInUse telescope, Item eyepiece, bool eyepieceBought, Item barlow, bool barlowBought) =>
        Of(problem, telescope, eyepiece, eyepieceBought, barlow, barlowBought);

    /// <summary>Adds the views of an eyepiece or zoom, alone or through a Barlow; none where a barrel does not fit.</summary>
    internal static void Add(
        PurchaseProblem problem, TelescopeInUse telescope, Item eyepiece, bool eyepieceBought, Item? barlow, bool barlowBought, List<KitView> views)
    {
        var optic = barlow?.Optic as Barlow;
        foreach (var factor in optic?.Factors ?? NoBarlow)
        {
            if (View.Of(telescope, eyepiece.Ocular!, optic, factor) is { } view)
            {
                views.Add(new KitView(problem, eyepiece, eyepieceBought, barlow, barlowBought, view));
            }
        }
    }

    /// <summary>Adds what the usable views of an eyepiece or zoom, alone or through a Barlow, show. A reticle eyepiece shows nothing.</summary>
    internal static void AddUsable(
        PurchaseProblem problem, TelescopeInUse telescope, Item eyepiece, bool ocularBought, Item? barlow, List<Showing> usable)
    {
        var (ocular, optic) = (eyepiece.Ocular!, barlow?.Optic as Barlow);
        foreach (var factor in optic?.Factors ?? NoBarlow)
        {
            if (View.IsPowerInRange(telescope, ocular, optic?.LnOf(factor) ?? 0)
                && View.Of(telescope, ocular, optic, factor) is { } view
                && view.NotUsableBecause(problem.Observer, problem.Preferences.LeastApparentFieldDeg, ocularBought) is null)
            {
                usable.Add(Showing.Of(problem, eyepiece, ocularBought, barlow, view));
            }
        }
    }

    /// <summary>Whether there is such a view and it is usable.</summary>
    internal static bool IsUsable(PurchaseProblem problem, View? view, bool ocularBought) =>
        view is { } one && one.NotUsableBecause(problem.Observer, problem.Preferences.LeastApparentFieldDeg, ocularBought) is null;

    private static List<KitView> Of(
        PurchaseProblem problem, TelescopeInUse telescope, Item eyepiece, bool eyepieceBought, Item? barlow, bool barlowBought)
    {
        List<KitView> views = [];
        Add(problem, telescope, eyepiece, eyepieceBought, barlow, barlowBought, views);
        return views;
    }
}
