using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// Whether a kit without some of its owned items is as good: its largest step, where that is more than enough, no larger, its
/// mean excess and its comfortable share hardly worse, the widest true field in each telescope hardly narrower, and every demand
/// that was met still met. What is not as good without an item is never as good without more.
/// </summary>
internal sealed class SpareTest
{
    /// <summary>A mean excess up to this much greater is as good: common practice, no source.</summary>
    public const double ExcessLeeway = 0.005;

    /// <summary>A comfortable share up to this much less is as good: common practice, no source.</summary>
    public const double ComfortLeeway = 0.01;

    /// <summary>This much of a true field is as good as all of it: common practice, no source.</summary>
    public const double ShareOfField = 0.98;

    private readonly Kit kit;
    private readonly WorkBudget? budget;
    private readonly ImmutableArray<int> telescopes;
    private readonly ImmutableArray<ImmutableArray<SpareView>> views;
    private readonly ImmutableArray<double> leastFieldsDeg;
    private readonly LadderFigures whole;
    private readonly Step mostStep;
    private readonly bool hasReticle;
    private readonly int viewCount;
    private readonly PartsOfKit parts;

    /// <param name="kit">The whole.</param>
    /// <param name="telescopes">The telescopes that count, by their indices.</param>
    /// <param name="budget">Counts the work; null for nobody who could cancel.</param>
    public SpareTest(Kit kit, ImmutableArray<int> telescopes, WorkBudget? budget)
    {
        (this.kit, this.telescopes, this.budget) = (kit, telescopes, budget);
        var indices = kit.Problem.Owned.Select((item, index) => (item, index)).ToDictionary(one => one.item, one => one.index);
        views = [.. kit.Ladders.Select(ViewsOfLadder)];
        viewCount = views.Sum(one => one.Length);
        leastFieldsDeg = [.. kit.Ladders.Select((_, t) => LeastFieldIn(t))];
        whole = kit.FiguresIn(telescopes);
        mostStep = Step.Max(kit.Problem.EnoughStep, whole.LargestStep);
        hasReticle = kit.Problem.Demands.ReticleLeastPower is { } least && ReticleRule.Serves(kit, least);
        parts = new PartsOfKit(kit, budget);

        ImmutableArray<SpareView> ViewsOfLadder(Ladder ladder) =>
            [.. ladder.Usable.Select(view => new SpareView(view, IndexOf(view.Eyepiece), IndexOf(view.Barlow)))];

        int IndexOf(Item? item) => item is not null && indices.TryGetValue(item, out var index) ? index : SpareView.NotOwned;
    }

    /// <summary>The usable views of each telescope.</summary>
    public ImmutableArray<ImmutableArray<SpareView>> ViewsOf => views;

    public ImmutableArray<int> Telescopes => telescopes;

    /// <summary>The narrowest true field, in degrees, that is as good as the widest of a telescope, and frames what must be framed in it.</summary>
    public double LeastFieldDeg(int telescope) => leastFieldsDeg[telescope];

    /// <summary>U, the length of a telescope's axis.</summary>
    public double LengthOf(int telescope) => kit.Ladders[telescope].Telescope.Axis.Length;

    /// <summary>The greatest mismatch that is as good.</summary>
    public double MostMismatch => mostStep.Half;

    /// <summary>Whether the kit without the owned item at this index is as good.</summary>
    public bool IsAsGoodWithout(int index)
    {
        var kept = new bool[kit.Problem.Owned.Length];
        Array.Fill(kept, true);
        kept[index] = false;
        return IsAsGood(kept);
    }

    /// <summary>Whether the kit with only these of the owned items is as good.</summary>
    /// <param name="kept">By the index of an item among those owned.</param>
    public bool IsAsGood(bool[] kept)
    {
        budget?.Spend(kept.Length + viewCount);
        return KeepsFields(kept) && KeepsFigures(kept) && KeepsAnywhere(kept) && KeepsReticle(kept);
    }

    private bool KeepsFigures(bool[] kept)
    {
        var figures = LadderFigures.Of([.. telescopes.Select(t => parts.In(t, index => views[t][index].IsLeft(kept)))]);
        return Step.Max(kit.Problem.EnoughStep, figures.LargestStep).AtMost(mostStep)
            && Tolerance.AtMost(figures.MeanExcess, whole.MeanExcess + ExcessLeeway)
            && Tolerance.AtLeast(figures.ComfortableShare, whole.ComfortableShare - ComfortLeeway);
    }

    private bool KeepsFields(bool[] kept)
    {
        for (var t = 0; t < views.Length; t++)
        {
            if (leastFieldsDeg[t] > 0 && !HasField(t, leastFieldsDeg[t], kept))
            {
                return false;
            }
        }

        return true;
    }

    private bool HasField(int telescope, double fieldDeg, bool[] kept)
    {
        foreach (var view in views[telescope])
        {
            if (view.IsLeft(kept) && Tolerance.AtLeast(view.View.View.TrueFieldDeg / fieldDeg, 1))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Of what must be framed in any telescope.</summary>
    private bool KeepsAnywhere(bool[] kept)
    {
        foreach (var framing in kit.Problem.Demands.MustFrame)
        {
            if (framing.TelescopeIndex is null && FramingRule.Frames(kit, framing.WidthDeg, null)
                && !Enumerable.Range(0, views.Length).Any(t => HasField(t, framing.WidthDeg, kept)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A reticle eyepiece is spare only where none is asked for; a Barlow that it needs is not, where it then falls short.</summary>
    private bool KeepsReticle(bool[] kept)
    {
        if (kit.Problem.Demands.ReticleLeastPower is not { } least)
        {
            return true;
        }

        if (kit.Problem.Owned.Where((item, index) => item.IsReticle && !kept[index]).Any())
        {
            return false;
        }

        Item[] left = [.. kit.Problem.Owned.Where((_, index) => kept[index]), .. kit.Purchases];
        return !hasReticle || ReticleRule.IsServedBy(kit.Problem, left, [.. left.Where(item => item.IsBarlow)], least);
    }

    private double LeastFieldIn(int telescope)
    {
        var widest = kit.WidestFieldDeg(telescope) ?? 0;
        return kit.Problem.Demands.MustFrame
            .Where(framing => framing.TelescopeIndex == telescope && FramingRule.Frames(kit, framing.WidthDeg, telescope))
            .Select(framing => framing.WidthDeg)
            .Append(ShareOfField * widest)
            .Max();
    }
}

/// <summary>A usable view, and which owned items it needs.</summary>
/// <param name="View">The view.</param>
/// <param name="Eyepiece">The index of its eyepiece among those owned, or <see cref="NotOwned"/>.</param>
/// <param name="Barlow">Likewise of its Barlow, if it has one.</param>
internal readonly record struct SpareView(KitView View, int Eyepiece, int Barlow)
{
    public const int NotOwned = -1;

    /// <summary>Whether it is left with only these of the owned items.</summary>
    public bool IsLeft(bool[] kept) => (Eyepiece == NotOwned || kept[Eyepiece]) && (Barlow == NotOwned || kept[Barlow]);
}
