using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What an item comes to beside what is owned: the first that applies.</summary>
public enum Verdict
{
    /// <summary>Its widest usable true field is much wider than that of what is owned.</summary>
    WidensTheView,

    /// <summary>The largest step or the mean excess shrinks by what can be read; or there was nothing to look through.</summary>
    FillsAStep,

    /// <summary>A usable view overlaps an owned one, or the item itself is owned already.</summary>
    Repeats,

    /// <summary>It fits no telescope, or makes only views that are of no use.</summary>
    NotUsable,

    /// <summary>It makes no view, or only such as land where the steps are enough already.</summary>
    ChangesNothing,
}

/// <summary>A view that shows much more than what is owned.</summary>
/// <param name="View">The view.</param>
/// <param name="WidestDeg">The widest true field so far, in degrees.</param>
public sealed record WiderField(KitView View, double WidestDeg);

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

    /// <summary>Every pair of such a view and an owned one that overlap, lower power first.</summary>
    public ImmutableArray<OverlappingPair> Repetitions { get; }

    public required Verdict Verdict { get; init; }

    /// <summary>Whether a recommendation would not buy it, for it makes more overlaps than are allowed, or is owned already.</summary>
    public required bool RepeatsTooMuch { get; init; }

    /// <summary>The jump that the item fills; null unless that is the verdict.</summary>
    public Filling? Filling { get; private init; }

    /// <summary>What it shows more; null unless that is the verdict.</summary>
    public WiderField? WiderField { get; private init; }

    /// <summary>The first verdict that applies, in the order of <see cref="Advice.Verdict"/>.</summary>
    /// <param name="problem">Of one telescope.</param>
    /// <param name="item">Owned or not, a candidate or not.</param>
    public static ItemMatch Of(PurchaseProblem problem, Item item)
    {
        var (before, after) = (Kit.Of(problem, []), Kit.Of(problem, [item]));
        var (ladder, equipped) = (before.Ladders.Single(), after.Ladders.Single());
        ImmutableArray<KitView> views = [.. equipped.Views.Where(view => view.NeedsPurchase)];
        ImmutableArray<OverlappingPair> repetitions = [.. equipped.Overlaps().Where(pair => pair.First.NeedsPurchase != pair.Second.NeedsPurchase)];
        KitView[] usable = [.. views.Where(view => view.IsUsable)];

        var isOwned = problem.Owned.Contains(item);
        var wider = isOwned ? null : WiderThan(ladder, usable);
        var filling = isOwned || wider is not null || !Improves(before.Figures, after.Figures) ? null : FillingOf(ladder, usable, repetitions);
        return new ItemMatch(before, after, views, repetitions)
        {
            Verdict = wider is not null ? Verdict.WidensTheView
                : filling is not null ? Verdict.FillsAStep
                : repetitions.Length > 0 || isOwned ? Verdict.Repeats
                : IsOfNoUse(item, views, ladder.Telescope.Telescope) ? Verdict.NotUsable
                : Verdict.ChangesNothing,
            RepeatsTooMuch = isOwned || OverlapRule.Left(problem, after.OverlapsThroughPurchases()) < 0,
            Filling = filling,
            WiderField = wider,
        };
    }

    private static bool IsOfNoUse(Item item, ImmutableArray<KitView> views, Telescope telescope) =>
        !item.Optic.Barrel.FitsInto(telescope.FocuserBarrel) || (views.Length > 0 && !views.Any(view => view.IsUsable));

    /// <summary>Null if it shows hardly more, or if there is nothing to look through yet.</summary>
    private static WiderField? WiderThan(Ladder ladder, KitView[] usable) =>
        !ladder.Usable.IsEmpty && usable.MaxBy(view => view.View.TrueFieldDeg) is { } widest
        && ladder.Usable.Max(view => view.View.TrueFieldDeg) is var widestDeg
        && Tolerance.AtLeast(widest.View.TrueFieldDeg / widestDeg, Overlap.WiderFieldRatio)
            ? new WiderField(widest, widestDeg)
            : null;

    /// <summary>By what can be read of the figures; where there was nothing to look through, any view does.</summary>
    private static bool Improves(LadderFigures before, LadderFigures after) => after.HasViews && (!before.HasViews
        || Step(after).ReadsBelow(Step(before)) || Excess(after).ReadsBelow(Excess(before)));

    private static RemarkValue Step(LadderFigures figures) => RemarkValue.Ratio("largestStep", figures.LargestStep.Ratio);

    private static RemarkValue Excess(LadderFigures figures) => RemarkValue.Percent("meanExcessPercent", 100 * (Math.Exp(figures.MeanExcess) - 1));

    /// <summary>By a view that overlaps none, if one lands in a jump.</summary>
    private static Filling? FillingOf(Ladder ladder, KitView[] usable, ImmutableArray<OverlappingPair> repetitions) =>
        Filling.Of(ladder, [.. usable.Where(view => !repetitions.Any(pair => pair.First == view || pair.Second == view))], _ => true)
        ?? Filling.Of(ladder, usable, _ => true);
}
