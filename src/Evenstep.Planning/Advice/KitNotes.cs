using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What an adviser remarks on a kit.</summary>
public static class KitNotes
{
    public const string RangeSetByBarrel = "range-set-by-barrel";
    public const string FastTelescope = "fast-telescope";
    public const string ManyOverlaps = "many-overlaps";
    public const string AssumedFigures = "assumed-figures";

    /// <summary>Of items that are bought.</summary>
    public const string Bought = "bought";

    /// <summary>Of eye relief that was assumed.</summary>
    public const string EyeRelief = "eye-relief";

    private const string ApparentFieldFigure = "apparentFieldDeg";
    private const string EyeReliefFigure = "eyeReliefMm";

    /// <summary>A power of which another is so many times as high is noticeably lower: common practice, no source.</summary>
    public const double NoticeablyLower = 1.1;

    /// <summary>As views say it.</summary>
    private const int FieldDecimals = 3;

    /// <summary>As views say it.</summary>
    private const int EyeReliefDecimals = 2;

    /// <summary>Focal ratios are told apart to so many places.</summary>
    private const int ConeDecimals = 1;

    /// <summary>Every code that <see cref="Of"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes = [RangeSetByBarrel, FastTelescope, AssumedFigures, ManyOverlaps];

    public static ImmutableArray<Remark> Of(Kit kit) =>
    [
        .. kit.Problem.Telescopes.Where(telescope => telescope.Range.LowestSetBy == RangeEnd.Barrel)
            .SelectMany(telescope => LimitedByBarrel(telescope, kit.Problem.Observer)),
        .. kit.Ladders.SelectMany(ladder => OfSteepCones(ladder, kit)),
        .. OfAssumedFigures(kit),
        .. kit.Ladders.SelectMany(OfManyOverlaps),
    ];

    /// <summary>What is against the purchases: that a telescope is too fast for them.</summary>
    public static IEnumerable<Remark> OfPurchases(Kit kit) =>
        kit.Ladders.SelectMany(ladder => OfSteepCones(ladder, kit)).Where(remark => remark.Variant == Bought);

    /// <summary>More pairs of views that overlap than are told.</summary>
    private static IEnumerable<Remark> OfManyOverlaps(Ladder ladder) => !ladder.Overlaps().Skip(Ladder.MostOverlapsTold).Any() ? [] :
    [
        new Remark(ManyOverlaps,
        [
            RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
            RemarkValue.Of("told", Ladder.MostOverlapsTold),
            RemarkValue.Of("overlaps", ladder.Overlaps().Count()),
        ]),
    ];

    /// <summary>The eye could use a noticeably lower power than any usual eyepiece for the focuser gives.</summary>
    private static IEnumerable<Remark> LimitedByBarrel(TelescopeInUse telescope, Observer observer)
    {
        var (lowest, lowestForEye) = (telescope.Range.Lowest, telescope.Telescope.ApertureMm / observer.DarkAdaptedPupilMm);
        return Tolerance.Below(lowest / lowestForEye, NoticeablyLower) ? [] :
        [
            new Remark(RangeSetByBarrel,
            [
                RemarkValue.Of("telescope", telescope.Telescope.Name),
                RemarkValue.Power("lowest", lowest),
                RemarkValue.Power("lowestForEye", lowestForEye),
                RemarkValue.Of("barrel", telescope.Telescope.FocuserBarrel),
            ]),
        ];
    }

    /// <summary>Eyepieces, zooms and Barlows that a usable view gives a steeper light cone than they are made for: what is owned
    /// and what is bought apart. A Barlow makes the cone of what follows it less steep.</summary>
    private static ImmutableArray<Remark> OfSteepCones(Ladder ladder, Kit kit)
    {
        var focalRatio = ladder.Telescope.Telescope.FocalRatio;
        var slow = ladder.Usable.SelectMany(view => TooSimple(view, focalRatio)).Distinct().ToLookup(kit.Purchases.Contains);
        return
        [
            .. slow[false].Any() ? [TooSteepFor([.. slow[false]], ladder, null)] : ImmutableArray<Remark>.Empty,
            .. slow[true].Any() ? [TooSteepFor([.. slow[true]], ladder, Bought)] : ImmutableArray<Remark>.Empty,
        ];
    }

    private static Remark TooSteepFor(ImmutableArray<Item> slow, Ladder ladder, string? variant) => new(FastTelescope,
    [
        RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
        new RemarkValue("focalRatio", ladder.Telescope.Telescope.FocalRatio, 2),
        .. RemarkValue.ItemsOf(slow),
        new RemarkValue("fastestFocalRatios", slow.Select(item => item.Optic.FastestFocalRatio!.Value).ToArray(), 2),
    ])
    {
        Variant = variant,
    };

    private static IEnumerable<Item> TooSimple(KitView view, double focalRatio)
    {
        if (IsTooSteep(view.Eyepiece, focalRatio * view.View.Factor))
        {
            yield return view.Eyepiece;
        }

        if (view.Barlow is { } barlow && IsTooSteep(barlow, focalRatio))
        {
            yield return barlow;
        }
    }

    /// <summary>Also by what can be read.</summary>
    private static bool IsTooSteep(Item item, double focalRatio) =>
        item.Optic.IsTooSimpleFor(focalRatio) && Cone(focalRatio).ReadsBelow(Cone(item.Optic.FastestFocalRatio!.Value));

    private static RemarkValue Cone(double focalRatio) => new("focalRatio", focalRatio, ConeDecimals);

    /// <summary>What nobody stated, and how it was taken.</summary>
    public static ImmutableArray<Remark> OfAssumedFigures(Kit kit)
    {
        Item[] eyepieces = [.. kit.Items.Where(item => item is { Optic: Eyepiece, IsReticle: false }).Distinct()];
        Remark[] remarks =
        [
            Assumed(
                ApparentFieldFigure,
                [.. eyepieces.Where(item => ((Eyepiece)item.Optic).IsApparentFieldAssumed)],
                FieldDecimals,
                ocular => ocular.ApparentFieldAtLongestDeg),
            Assumed(
                EyeReliefFigure,
                [.. eyepieces.Where(item => ((Eyepiece)item.Optic).IsEyeReliefAssumed)],
                EyeReliefDecimals,
                ocular => ocular.EyeReliefMm),
        ];
        return [.. remarks.Where(remark => ((double[])remark.Values[^1].Value!).Length > 0)];
    }

    private static Remark Assumed(string figureName, ImmutableArray<Item> items, int decimals, Func<Ocular, double> figure) => new(AssumedFigures,
    [
        RemarkValue.Of("figure", figureName),
        .. RemarkValue.ItemsOf(items),
        new RemarkValue("figures", items.Select(item => figure(item.Ocular!)).ToArray(), decimals),
    ])
    {
        Variant = figureName == EyeReliefFigure ? EyeRelief : null,
    };
}
