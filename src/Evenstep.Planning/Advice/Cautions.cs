using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What to beware of with a kit.</summary>
public static class Cautions
{
    public const string Sun = "sun";
    public const string Eyesight = "eyesight";
    public const string ExitPupilNarrow = "exit-pupil-narrow";
    public const string ExitPupilWide = "exit-pupil-wide";
    public const string HeavyForFocuser = "heavy-for-focuser";
    public const string EyeReliefTight = "eye-relief-tight";
    public const string ZoomFieldNarrow = "zoom-field-narrow";

    /// <summary>An apparent field below this, in degrees, is like looking through a tube: common practice, no source.</summary>
    public const double NarrowApparentFieldDeg = 45;

    /// <summary>Eye relief that exceeds what is needed by less than this, in mm, is barely enough: common practice, no source.</summary>
    public const double EyeReliefMarginMm = 2;

    /// <summary>Every code that <see cref="Of"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes =
        [Sun, Eyesight, ExitPupilNarrow, ExitPupilWide, HeavyForFocuser, EyeReliefTight, ZoomFieldNarrow];

    /// <summary>The cautions for a kit, that of the Sun always and first.</summary>
    public static ImmutableArray<Remark> Of(Kit kit) =>
    [
        new Remark(Sun, []),
        .. OfEyesight(kit.Problem.Observer),
        .. OfExitPupils(kit),
        .. kit.Ladders.SelectMany(OfWeight),
        .. OfEyeRelief(kit),
        .. OfZooms(kit),
    ];

    /// <summary>More than this, in grams, is heavy for a focuser: common practice, no source.</summary>
    public static double HeavyGrams(Barrel focuser) => focuser switch
    {
        Barrel.Inch0965 => 150,
        Barrel.Inch125 => 400,
        _ => 1000,
    };

    private static IEnumerable<Remark> OfEyesight(Observer observer) =>
        observer.WearsSpectacles || observer.AstigmatismDioptres is not null ? [new Remark(Eyesight, [])] : [];

    private static IEnumerable<Remark> OfExitPupils(Kit kit)
    {
        var usable = kit.Ladders.SelectMany(ladder => ladder.Usable).ToList();
        var narrowest = usable.MinBy(view => NarrowestExitPupilMm(view.View));
        if (narrowest is not null && Tolerance.Below(NarrowestExitPupilMm(narrowest.View), PowerRange.NarrowestExitPupilMm))
        {
            yield return ExitPupil(
                ExitPupilNarrow, narrowest.View.PowerAtShortest, NarrowestExitPupilMm(narrowest.View), "leastMm", PowerRange.NarrowestExitPupilMm);
        }

        var pupilMm = kit.Problem.Observer.DarkAdaptedPupilMm;
        var widest = usable.MaxBy(view => view.View.ExitPupilMm);
        if (widest is not null && Tolerance.Above(widest.View.ExitPupilMm, pupilMm))
        {
            yield return ExitPupil(ExitPupilWide, widest.View.Power, widest.View.ExitPupilMm, "pupilMm", pupilMm);
        }
    }

    /// <summary>A zoom's is narrowest at its shortest focal length.</summary>
    private static double NarrowestExitPupilMm(View view) => view.Telescope.Telescope.ApertureMm / view.PowerAtShortest;

    private static Remark ExitPupil(string code, double power, double exitPupilMm, string limit, double limitMm) => new(code,
    [
        RemarkValue.Power("power", power),
        RemarkValue.Millimetres("exitPupilMm", exitPupilMm),
        RemarkValue.Millimetres(limit, limitMm),
    ]);

    /// <summary>Of the heaviest that is ever in one focuser, as far as masses are known.</summary>
    private static IEnumerable<Remark> OfWeight(Ladder ladder)
    {
        var barrel = ladder.Telescope.Telescope.FocuserBarrel;
        if (ladder.Usable.MaxBy(KnownGrams) is not { } heaviest || KnownGrams(heaviest) <= HeavyGrams(barrel))
        {
            yield break;
        }

        yield return new Remark(HeavyForFocuser,
        [
            RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
            RemarkValue.Of("barrel", barrel),
            new RemarkValue("massGrams", KnownGrams(heaviest), 1),
            new RemarkValue("limitGrams", HeavyGrams(barrel), 1),
            .. RemarkValue.ItemsOf(heaviest.Barlow is { } barlow ? [heaviest.Eyepiece, barlow] : [heaviest.Eyepiece]),
        ]);
    }

    private static double KnownGrams(KitView view) => (view.Eyepiece.MassGrams ?? 0) + (view.Barlow?.MassGrams ?? 0);

    /// <summary>One for each need: whoever takes the spectacles off for some views needs less there.</summary>
    private static IEnumerable<Remark> OfEyeRelief(Kit kit) =>
        from view in kit.Ladders.SelectMany(ladder => ladder.Usable)
        let needed = kit.Problem.Observer.NeededEyeReliefMm(view.View.ExitPupilMm, kit.Purchases.Contains(view.Eyepiece))
        where needed > 0 && Tolerance.Below(view.View.Ocular.EyeReliefMm, needed + EyeReliefMarginMm)
        group view.Eyepiece by needed into tight
        orderby tight.Key
        select new Remark(EyeReliefTight,
        [
            RemarkValue.Millimetres("neededMm", tight.Key),
            .. RemarkValue.ItemsOf([.. tight.Distinct()]),
        ]);

    private static IEnumerable<Remark> OfZooms(Kit kit)
    {
        ImmutableArray<Item> narrow =
        [
            .. kit.Ladders.SelectMany(ladder => ladder.Usable).Select(view => view.Eyepiece).Distinct()
                .Where(item => item.IsZoom && Tolerance.Below(item.Ocular!.ApparentFieldAtLongestDeg, NarrowApparentFieldDeg)),
        ];
        return narrow.Select(zoom => new Remark(ZoomFieldNarrow,
        [
            RemarkValue.Of("itemId", zoom.Id),
            RemarkValue.Of("name", zoom.Name ?? zoom.Id),
            RemarkValue.Degrees("apparentFieldDeg", zoom.Ocular!.ApparentFieldAtLongestDeg),
            RemarkValue.Degrees("narrowDeg", NarrowApparentFieldDeg),
        ]));
    }
}
