using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Why a purchase is in a plan: what the kit would lack without it.</summary>
public static class Reasons
{
    public const string AskedFor = "asked-for";
    public const string Reticle = "reticle";
    public const string Frames = "frames";
    public const string GrantsWideView = "grants-wide-view";
    public const string ReachesLowEnd = "reaches-low-end";
    public const string ReachesHighEnd = "reaches-high-end";
    public const string FillsStep = "fills-step";
    public const string BarlowAdds = "barlow-adds";
    public const string EvensSteps = "evens-steps";

    /// <summary>Every code that <see cref="For"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes =
        [AskedFor, Reticle, Frames, GrantsWideView, ReachesLowEnd, ReachesHighEnd, FillsStep, BarlowAdds, EvensSteps];

    /// <summary>The reasons for one item of a kit, beside the same kit without it; never empty.</summary>
    public static ImmutableArray<Remark> For(Item item, Kit kit, Kit without, WideViewWish? wish)
    {
        ImmutableArray<Remark> reasons =
        [
            .. FromDemands(item, kit, without, wish),
            .. kit.Ladders.Zip(without.Ladders).SelectMany(pair => FromLadder(item, pair.First, pair.Second)),
        ];
        return reasons.IsEmpty ? [Evens(kit, without)] : reasons;
    }

    private static IEnumerable<Remark> FromDemands(Item item, Kit kit, Kit without, WideViewWish? wish)
    {
        var demands = kit.Problem.Demands;
        if (demands.MustInclude.Contains(item.Id))
        {
            yield return new Remark(AskedFor, []);
        }

        if (demands.ReticleLeastPower is { } least && Breaches.Of(without).OfType<Breach.Reticle>().Any())
        {
            yield return new Remark(Reticle, [RemarkValue.Power("leastPower", least), RemarkValue.Power("power", kit.ReticlePower() ?? 0)]);
        }

        foreach (var framing in demands.MustFrame.Where(one => !Breaches.Frames(without, one.WidthDeg, one.TelescopeIndex)))
        {
            yield return new Remark(Frames,
            [
                RemarkValue.Of("name", framing.Name ?? ""),
                RemarkValue.Degrees("widthDeg", framing.WidthDeg),
                RemarkValue.Degrees("trueFieldDeg", kit.WidestFieldDeg(framing.TelescopeIndex) ?? 0),
            ]);
        }

        if (wish is { Granted: true } && !Breaches.Frames(without, wish.TrueFieldDeg, null))
        {
            yield return new Remark(GrantsWideView, [RemarkValue.Degrees("trueFieldDeg", kit.WidestFieldDeg() ?? 0)]);
        }
    }

    /// <summary>What the item changes in one telescope: a Barlow its powers, an eyepiece the widest jump it lands in.</summary>
    private static IEnumerable<Remark> FromLadder(Item item, Ladder ladder, Ladder without)
    {
        KitView[] added = [.. ladder.Usable.Where(view => view.Needs(item))];
        if (added.Length == 0)
        {
            yield break;
        }

        if (item.IsBarlow)
        {
            yield return new Remark(BarlowAdds,
            [
                RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
                new RemarkValue("powers", added.Select(view => view.View.Power).ToArray(), 1),
                RemarkValue.Of("eyepieceIds", added.Select(view => view.Eyepiece.Id).ToArray()),
            ]);
        }

        if (without.Usable.IsEmpty)
        {
            yield return Fills(WholeRange(ladder.Telescope), added[0], ladder);
            yield break;
        }

        foreach (var jump in without.Jumps().OrderByDescending(jump => jump.Weighed))
        {
            KitView[] landed = [.. added.Where(view => LandsIn(view, jump, ladder))];
            if (landed.Length > 0)
            {
                yield return Fills(jump, Foremost(landed, jump, ladder), ladder);
                yield break;
            }
        }
    }

    private static bool LandsIn(KitView view, Jump jump, Ladder ladder)
    {
        var axis = ladder.Telescope.Axis;
        var (from, to) = (axis.PositionOf(jump.FromPower), axis.PositionOf(jump.ToPower));
        var (low, high) = (IsLowEnd(jump, ladder) ? from - 1 : from, IsHighEnd(jump, ladder) ? to + 1 : to);
        return Tolerance.Above(view.View.To, low) && Tolerance.Below(view.View.From, high);
    }

    /// <summary>Of views in order of power the one that does most for a jump: the farthest out at an end of the range, else
    /// the one nearest to the middle.</summary>
    private static KitView Foremost(KitView[] landed, Jump jump, Ladder ladder) =>
        IsLowEnd(jump, ladder) ? landed[0]
        : IsHighEnd(jump, ladder) ? landed[^1]
        : landed.MinBy(view => Math.Abs(Math.Log(view.View.CutPower * view.View.CutPower / jump.FromPower / jump.ToPower)))!;

    private static bool IsLowEnd(Jump jump, Ladder ladder) =>
        jump.AtEnd && Tolerance.AtMost(jump.FromPower / ladder.Telescope.Range.Lowest, 1);

    private static bool IsHighEnd(Jump jump, Ladder ladder) => jump.AtEnd && !IsLowEnd(jump, ladder);

    private static Jump WholeRange(TelescopeInUse telescope) =>
        new(telescope.Range.Lowest, telescope.Range.Highest, telescope.Axis.Length, AtEnd: false);

    private static Remark Fills(Jump jump, KitView landed, Ladder ladder)
    {
        var code = IsLowEnd(jump, ladder) ? ReachesLowEnd : IsHighEnd(jump, ladder) ? ReachesHighEnd : FillsStep;
        return new Remark(code,
        [
            RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
            RemarkValue.Power("from", jump.FromPower),
            RemarkValue.Power("to", jump.ToPower),
            RemarkValue.Power("power", landed.View.Power),
        ]);
    }

    private static Remark Evens(Kit kit, Kit without) => new(EvensSteps,
    [
        RemarkValue.Ratio("largestStep", kit.Figures.LargestStep),
        RemarkValue.Ratio("largestStepWithoutIt", without.Figures.LargestStep),
    ]);
}
