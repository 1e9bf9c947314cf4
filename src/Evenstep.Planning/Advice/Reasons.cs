using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Why a purchase is in a plan: what the kit would lack without it.</summary>
public static class Reasons
{
    public const string AskedFor = "asked-for";
    public const string Reticle = "reticle";
    public const string ReticlePower = "reticle-power";
    public const string Frames = "frames";
    public const string GrantsWideView = "grants-wide-view";
    public const string ReachesLowEnd = "reaches-low-end";
    public const string ReachesHighEnd = "reaches-high-end";
    public const string FillsStep = "fills-step";
    public const string BarlowAdds = "barlow-adds";
    public const string ZoomCovers = "zoom-covers";

    /// <summary>Nothing would be lost without it; so it stands only in a plan whose proof the work limit ended.</summary>
    public const string NotProvedNeeded = "not-proved-needed";

    /// <summary>Without the item there would be no usable view.</summary>
    public const string First = "first";

    /// <summary>Every code that <see cref="For"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes =
        [AskedFor, Reticle, ReticlePower, Frames, GrantsWideView, ReachesLowEnd, ReachesHighEnd, FillsStep, BarlowAdds, ZoomCovers, NotProvedNeeded];

    /// <summary>The reasons for one item of a kit, beside the same kit without it; never empty.</summary>
    public static ImmutableArray<Remark> For(Item item, Kit kit, Kit without, WideViewWish? wish)
    {
        ImmutableArray<Remark> reasons =
        [
            .. FromDemands(item, kit, without, wish),
            .. kit.Ladders.Zip(without.Ladders).SelectMany(pair => FromLadder(item, pair.First, pair.Second)),
        ];
        return reasons.IsEmpty ? [new Remark(NotProvedNeeded, [])] : reasons;
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
            yield return new Remark(
                item.IsBarlow ? ReticlePower : Reticle, [RemarkValue.Power("leastPower", least), RemarkValue.Power("power", kit.ReticlePower() ?? 0)]);
        }

        foreach (var framing in demands.MustFrame.Where(one => !FramingRule.Frames(without, one.WidthDeg, one.TelescopeIndex)))
        {
            yield return new Remark(Frames,
            [
                RemarkValue.Of("name", framing.Name ?? ""),
                RemarkValue.Degrees("widthDeg", framing.WidthDeg),
                RemarkValue.Degrees("trueFieldDeg", kit.WidestFieldDeg(framing.TelescopeIndex) ?? 0),
            ]);
        }

        if (wish is { Granted: true } && !FramingRule.Frames(without, wish.TrueFieldDeg, null))
        {
            yield return new Remark(GrantsWideView, [RemarkValue.Degrees("trueFieldDeg", kit.WidestFieldDeg() ?? 0)]);
        }
    }

    /// <summary>What the item changes in one telescope: a Barlow its powers, a zoom what it covers, and each the widest jump it
    /// lands in.</summary>
    private static IEnumerable<Remark> FromLadder(Item item, Ladder ladder, Ladder without)
    {
        KitView[] added = [.. ladder.Usable.Where(view => view.Needs(item))];
        return added.Length == 0 ? [] : [.. FromKind(item, ladder, added), .. FromJump(item, ladder, without, added)];
    }

    private static IEnumerable<Remark> FromKind(Item item, Ladder ladder, KitView[] added)
    {
        if (item.IsBarlow)
        {
            yield return new Remark(BarlowAdds,
            [
                RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
                new RemarkValue("powers", added.Select(view => view.View.Power).ToArray(), 1),
                RemarkValue.Of("eyepieceIds", added.Select(view => view.Eyepiece.Id).ToArray()),
                RemarkValue.Of("names", added.Select(view => view.Eyepiece).Distinct().Select(eyepiece => eyepiece.Name ?? eyepiece.Id).ToArray()),
            ]);
        }

        if (item.IsZoom && added.FirstOrDefault(view => view.Barlow is null) is { View: var alone })
        {
            var (from, to) = StretchOf(alone, ladder.Telescope.Range);
            yield return new Remark(ZoomCovers,
            [
                RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
                RemarkValue.Power("from", from),
                RemarkValue.Power("to", to),
            ]);
        }
    }

    /// <summary>The powers of use that a zoom gives; all of its own, if they lie beyond an end and count as that.</summary>
    private static (double From, double To) StretchOf(View zoom, PowerRange range) => range.Cut(zoom.Power) < range.Cut(zoom.PowerAtShortest)
        ? (range.Cut(zoom.Power), range.Cut(zoom.PowerAtShortest))
        : (zoom.Power, zoom.PowerAtShortest);

    /// <summary>Between the ends a zoom does more than fill one jump, and has said so.</summary>
    private static IEnumerable<Remark> FromJump(Item item, Ladder ladder, Ladder without, KitView[] added) =>
        Filling.Of(without, added, jump => jump.AtEnd || !item.IsZoom) is { } filling ? [Fills(filling, ladder.Telescope, without.Usable.IsEmpty)] : [];

    private static Remark Fills(Filling filling, TelescopeInUse telescope, bool isFirst)
    {
        var code = filling.Jump.Place switch
        {
            JumpPlace.LowEnd => ReachesLowEnd,
            JumpPlace.HighEnd => ReachesHighEnd,
            _ => FillsStep,
        };
        return new Remark(code,
        [
            RemarkValue.Of("telescope", telescope.Telescope.Name),
            RemarkValue.Power("from", filling.Jump.FromPower),
            RemarkValue.Power("to", filling.Jump.ToPower),
            RemarkValue.Power("power", filling.Power),
        ])
        {
            Variant = isFirst ? First : filling.Variant,
        };
    }
}
