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
    public const string Framing = "frames";
    public const string GrantsWideView = "grants-wide-view";
    public const string ReachesLowEnd = "reaches-low-end";
    public const string ReachesHighEnd = "reaches-high-end";
    public const string FillsStep = "fills-step";
    public const string BarlowAdds = "barlow-adds";
    public const string ZoomCovers = "zoom-covers";

    public const string BetterViews = "better-views";

    /// <summary>Nothing would be lost without it; so it stands only in a plan whose proof the work limit ended.</summary>
    public const string NotProvedNeeded = "not-proved-needed";

    /// <summary>Without the item there would be no usable view.</summary>
    public const string First = "first";

    /// <summary>It is not comfort that is better, but what the observer prefers.</summary>
    public const string Preferred = "preferred";

    /// <summary>Through a Barlow, or by a Barlow a reticle eyepiece.</summary>
    public const string Through = "through";

    /// <summary>A comfortable share, in percent, is greater only by this much: common practice, no source.</summary>
    private const double LeastGainPercent = 1;

    /// <summary>Every code that <see cref="For"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes =
    [
        AskedFor, Reticle, ReticlePower, Framing, GrantsWideView, ReachesLowEnd, ReachesHighEnd, FillsStep, BarlowAdds, ZoomCovers, BetterViews,
        NotProvedNeeded,
    ];

    /// <summary>The reasons for one item of a kit, beside the same kit without it; never empty.</summary>
    /// <param name="item">One of the kit's purchases.</param>
    /// <param name="kit">With it.</param>
    /// <param name="without">Without it.</param>
    /// <param name="plan">The plan whose kit it is; null for a kit without one.</param>
    public static ImmutableArray<Remark> For(Item item, Kit kit, Kit without, Plan? plan)
    {
        ImmutableArray<Remark> reasons =
        [
            .. FromDemands(item, kit, without, plan?.Wish),
            .. FromLadders(item, kit, without, Filling.NoticeablySmaller),
        ];
        return !reasons.IsEmpty ? reasons :
        [
            .. FromQuality(kit, without, plan).Concat(FromLadders(item, kit, without, 1)).DefaultIfEmpty(new Remark(NotProvedNeeded, [])).Take(1),
        ];
    }

    private static IEnumerable<Remark> FromLadders(Item item, Kit kit, Kit without, double leastShrinking) =>
        kit.Ladders.Zip(without.Ladders).SelectMany(pair => FromLadder(item, pair.First, pair.Second, leastShrinking));

    /// <summary>That views are better with it, where it fills no step.</summary>
    private static IEnumerable<Remark> FromQuality(Kit kit, Kit without, Plan? plan)
    {
        if (plan is not { Values: { } values, Candidacy.Telescopes: var telescopes })
        {
            yield break;
        }

        var (with, left) = (100 * kit.FiguresIn(telescopes).ComfortableShare, 100 * without.FiguresIn(telescopes).ComfortableShare);
        var measure = QualityMeasure.Of(kit.Problem, telescopes, values.LnLargestStepAllowed);
        if (with - left >= LeastGainPercent || Tolerance.Above(measure.Of(kit), measure.Of(without)))
        {
            yield return new Remark(BetterViews, [RemarkValue.Percent("comfortablePercent", with), RemarkValue.Percent("withoutPercent", left)])
            {
                Variant = with - left >= LeastGainPercent ? null : Preferred,
            };
        }
    }

    private static IEnumerable<Remark> FromDemands(Item item, Kit kit, Kit without, WideViewWish? wish)
    {
        var demands = kit.Problem.Demands;
        if (demands.MustInclude.Contains(item.Id))
        {
            yield return new Remark(AskedFor, []);
        }

        if (demands.ReticleLeastPower is { } least && Breaches.Of(without).OfType<Breach.Reticle>().Any()
            && ReticlePowers.PlainestFor(kit, item, least) is { } use)
        {
            yield return OfReticle(item, use, least);
        }

        foreach (var framing in demands.MustFrame.Where(one => Frames(kit, one) && !Frames(without, one)))
        {
            yield return new Remark(Framing,
            [
                .. framing.TelescopeIndex is { } index
                    ? [RemarkValue.Of("telescope", kit.Problem.Telescopes[index].Telescope.Name)]
                    : Array.Empty<RemarkValue>(),
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

    private static bool Frames(Kit kit, FramingDemand framing) => FramingRule.Frames(kit, framing.WidthDeg, framing.TelescopeIndex);

    private static Remark OfReticle(Item item, ReticleUse use, double leastPower) => new(item.IsBarlow ? ReticlePower : Reticle,
    [
        RemarkValue.Of("telescope", use.Telescope.Telescope.Name),
        RemarkValue.Power("leastPower", leastPower),
        RemarkValue.Power("power", use.Power),
        .. item.IsBarlow ? RemarkValue.ItemOf(use.Reticle) : [RemarkValue.Of("itemId", use.Barlow?.Id), RemarkValue.Of("name", use.Barlow)],
    ])
    {
        Variant = !item.IsBarlow && use.Barlow is not null ? Through : null,
    };

    /// <summary>What the item changes in one telescope: a Barlow its powers, a zoom what it covers, and each the widest jump it
    /// lands in.</summary>
    private static IEnumerable<Remark> FromLadder(Item item, Ladder ladder, Ladder without, double leastShrinking)
    {
        KitView[] added = [.. ladder.Usable.Where(view => view.Needs(item))];
        return added.Length == 0 ? [] : [.. FromKind(item, ladder, without, added), .. FromJump(item, ladder, without, added, leastShrinking)];
    }

    private static IEnumerable<Remark> FromKind(Item item, Ladder ladder, Ladder without, KitView[] added)
    {
        if (item.IsBarlow && AddedPowers.Of(added, without) is { IsEmpty: false } powers)
        {
            yield return new Remark(BarlowAdds,
            [
                RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
                new RemarkValue("powers", powers.Select(one => one.From).ToArray(), 1),
                new RemarkValue("powersAtShortest", powers.Select(one => (object?)one.To).ToArray(), 1),
                RemarkValue.Of("eyepieceIds", powers.Select(one => one.Eyepiece.Id).ToArray()),
                RemarkValue.Of("names", powers.Select(one => one.Eyepiece).ToArray()),
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
    private static IEnumerable<Remark> FromJump(Item item, Ladder ladder, Ladder without, KitView[] added, double leastShrinking) =>
        Filling.Of(without, added, jump => jump.AtEnd || !item.IsZoom, leastShrinking) is { } filling
            ? [Fills(filling, item, ladder.Telescope, without.Usable.IsEmpty)]
            : [];

    private static Remark Fills(Filling filling, Item item, TelescopeInUse telescope, bool isFirst)
    {
        var code = filling.Jump.Place switch
        {
            JumpPlace.LowEnd => ReachesLowEnd,
            JumpPlace.HighEnd => ReachesHighEnd,
            _ => FillsStep,
        };
        var with = item.IsBarlow ? filling.View.Eyepiece : filling.View.Barlow;
        return new Remark(code,
        [
            RemarkValue.Of("telescope", telescope.Telescope.Name),
            RemarkValue.Power("from", filling.Jump.FromPower),
            RemarkValue.Power("to", filling.Jump.ToPower),
            RemarkValue.Power("power", filling.Power),
            RemarkValue.Of("withId", with?.Id),
            RemarkValue.Of("with", with),
        ])
        {
            Variant = isFirst ? First : filling.Variant,
        };
    }
}
