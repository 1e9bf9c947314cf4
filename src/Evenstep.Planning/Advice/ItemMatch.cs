using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What an item comes to beside what is owned. The first that applies, in the order of <see cref="ItemMatch.Of"/>.</summary>
public enum Verdict
{
    /// <summary>A view that repeats nothing makes the mean excess less: it lands in a jump wider than is enough.</summary>
    FillsAStep,

    /// <summary>A view that repeats nothing shows much more than what is owned shows at that power.</summary>
    WidensTheView,

    /// <summary>A usable view repeats an owned one, or the item itself is owned already.</summary>
    Repeats,

    /// <summary>It fits no telescope, or makes only views that are of no use.</summary>
    NotUsable,

    /// <summary>It makes no view, or only such as land where the steps are enough already.</summary>
    ChangesNothing,
}

/// <summary>A view that shows much more than what is owned.</summary>
/// <param name="View">The view.</param>
/// <param name="WidestDeg">The widest true field so far, in degrees.</param>
/// <param name="AtItsPower">Whether that is the widest at this power; else nothing owned gives this power, and it is the widest of all.</param>
public sealed record WiderField(KitView View, double WidestDeg, bool AtItsPower);

/// <summary>What one item does for what is owned, in one telescope.</summary>
public sealed record ItemMatch
{
    private ItemMatch(Kit before, Kit after, ImmutableArray<KitView> views, ImmutableArray<OverlappingPair> repetitions)
    {
        Before = before;
        After = after;
        Views = views;
        Repetitions = repetitions;
    }

    public Kit Before { get; }

    /// <summary>With the item.</summary>
    public Kit After { get; }

    /// <summary>Every view that needs the item, usable or not, by power.</summary>
    public ImmutableArray<KitView> Views { get; }

    /// <summary>Every pair of such a view and an owned one that repeat one another, lower power first.</summary>
    public ImmutableArray<OverlappingPair> Repetitions { get; }

    public required Verdict Verdict { get; init; }

    /// <summary>The jump that the item fills; null unless that is the verdict.</summary>
    public Filling? Filling { get; private init; }

    /// <summary>What it shows more; null unless that is the verdict.</summary>
    public WiderField? WiderField { get; private init; }

    /// <summary>
    /// Whether the item is of no use; else whether it fills a step; else whether it widens the view; else whether it
    /// repeats what is owned; else it changes nothing.
    /// </summary>
    /// <param name="problem">Of one telescope.</param>
    /// <param name="item">Owned or not, a candidate or not.</param>
    public static ItemMatch Of(PurchaseProblem problem, Item item)
    {
        var (before, after) = (Kit.Of(problem, []), Kit.Of(problem, [item]));
        var ladder = before.Ladders.Single();
        ImmutableArray<KitView> views = [.. after.Ladders.Single().Views.Where(view => view.NeedsPurchase)];
        ImmutableArray<OverlappingPair> repetitions =
            [.. after.Ladders.Single().Overlaps().Where(pair => pair.First.NeedsPurchase != pair.Second.NeedsPurchase)];
        KitView[] fresh = [.. views.Where(view => view.IsUsable && !repetitions.Any(pair => pair.First == view || pair.Second == view))];

        var filling = Improves(ladder, fresh, problem.MismatchLimits) ? Filling.Of(ladder, fresh, _ => true) : null;
        var wider = filling is null ? WiderBy(fresh, ladder, problem.Preferences.LnLeastStep) : null;
        return new ItemMatch(before, after, views, repetitions)
        {
            Verdict = IsOfNoUse(item, views, ladder.Telescope.Telescope) ? Verdict.NotUsable
                : filling is not null ? Verdict.FillsAStep
                : wider is not null ? Verdict.WidensTheView
                : repetitions.Length > 0 || problem.Owned.Contains(item) ? Verdict.Repeats
                : Verdict.ChangesNothing,
            Filling = filling,
            WiderField = wider,
        };
    }

    private static bool IsOfNoUse(Item item, ImmutableArray<KitView> views, Telescope telescope) =>
        !item.Optic.Barrel.FitsInto(telescope.FocuserBarrel) || (views.Length > 0 && !views.Any(view => view.IsUsable));

    /// <summary>Whether the views leave less excess; where there was nothing to look through, any does.</summary>
    private static bool Improves(Ladder ladder, KitView[] fresh, MismatchLimits limits)
    {
        if (fresh.Length == 0 || ladder.Usable.IsEmpty)
        {
            return fresh.Length > 0;
        }

        Reach[] reaches = [.. ladder.Usable.Concat(fresh).Select(view => view.Reach)];
        var with = LadderFigures.Of(reaches, new double[reaches.Length], ladder.Telescope.Axis.Length, limits);
        return Tolerance.Below(with.MeanExcess, ladder.Figures.MeanExcess);
    }

    /// <summary>The view that widens most.</summary>
    private static WiderField? WiderBy(KitView[] fresh, Ladder ladder, double lnLeastStep) => fresh
        .Select(view => Beside(view, ladder, lnLeastStep))
        .Where(wider => Tolerance.Above(RatioOf(wider), Overlap.WiderFieldRatio))
        .MaxBy(RatioOf);

    private static double RatioOf(WiderField wider) => wider.View.View.TrueFieldDeg / wider.WidestDeg;

    private static WiderField Beside(KitView view, Ladder ladder, double lnLeastStep)
    {
        KitView[] near = [.. ladder.Usable.Where(other => Tolerance.Below(Math.Abs(other.Showing.LnCutPower - view.Showing.LnCutPower), lnLeastStep))];
        return new WiderField(view, (near.Length > 0 ? near : [.. ladder.Usable]).Max(other => other.View.TrueFieldDeg), near.Length > 0);
    }
}
