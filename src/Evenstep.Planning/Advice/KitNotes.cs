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

    /// <summary>A power of which another is so many times as high is noticeably lower: common practice, no source.</summary>
    public const double NoticeablyLower = 1.1;

    /// <summary>Focal ratios are told apart to so many places.</summary>
    private const int ConeDecimals = 1;

    /// <summary>Every code that <see cref="Of"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes = [RangeSetByBarrel, FastTelescope, ManyOverlaps];

    public static ImmutableArray<Remark> Of(Kit kit) =>
    [
        .. kit.Problem.Telescopes.Where(telescope => telescope.Range.LowestSetBy == RangeEnd.Barrel)
            .SelectMany(telescope => LimitedByBarrel(telescope, kit.Problem.Observer)),
        .. kit.Ladders.SelectMany(OfSteepCones),
        .. kit.Ladders.SelectMany(OfManyOverlaps),
    ];

    /// <summary>More pairs of views that repeat one another than are told.</summary>
    private static IEnumerable<Remark> OfManyOverlaps(Ladder ladder) => !ladder.Overlaps().Skip(Ladder.MostOverlapsTold).Any() ? [] :
    [
        new Remark(ManyOverlaps,
        [
            RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
            RemarkValue.Of("told", Ladder.MostOverlapsTold),
            RemarkValue.Of("overlaps", ladder.Overlaps().Count()),
        ]),
    ];

    /// <summary>The eye could use a noticeably lower power than any practical eyepiece for the focuser gives.</summary>
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

    /// <summary>Eyepieces that a usable view shows a steeper light cone than they are made for. A Barlow makes it less steep.</summary>
    private static IEnumerable<Remark> OfSteepCones(Ladder ladder)
    {
        var focalRatio = ladder.Telescope.Telescope.FocalRatio;
        ImmutableArray<Item> slow = [.. ladder.Usable.Where(view => IsTooSteep(view, focalRatio)).Select(view => view.Eyepiece).Distinct()];
        return slow.IsEmpty ? [] :
        [
            new Remark(FastTelescope,
            [
                RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
                new RemarkValue("focalRatio", focalRatio, 2),
                .. RemarkValue.ItemsOf(slow),
                new RemarkValue("fastestFocalRatios", slow.Select(item => FastestFor(item)!.Value).ToArray(), 2),
            ]),
        ];
    }

    private static bool IsTooSteep(KitView view, double focalRatio) =>
        FastestFor(view.Eyepiece) is { } fastest && Tolerance.Below(focalRatio * view.View.Factor / fastest, 1)
        && Cone(focalRatio).ReadsBelow(Cone(fastest));

    private static RemarkValue Cone(double focalRatio) => new("focalRatio", focalRatio, ConeDecimals);

    private static double? FastestFor(Item item) => (item.Optic as Eyepiece)?.FastestFocalRatio;
}
