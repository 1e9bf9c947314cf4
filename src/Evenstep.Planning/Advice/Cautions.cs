using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What to beware of with a kit. A limit is passed only if that can still be read once both are rounded for reading.</summary>
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

    /// <summary>Where the pupil is that of the observer's age.</summary>
    public const string OfAge = "of-age";

    /// <summary>Where neither the pupil nor the age is known.</summary>
    public const string Usual = "usual";

    /// <summary>Every code that <see cref="Of"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes =
        [Sun, Eyesight, ExitPupilNarrow, ExitPupilWide, HeavyForFocuser, EyeReliefTight, ZoomFieldNarrow];

    /// <summary>The cautions for a kit, that of the Sun always and first.</summary>
    public static ImmutableArray<Remark> Of(Kit kit) =>
    [
        new Remark(Sun, []),
        .. OfEyesight(kit.Problem.Observer),
        .. kit.Ladders.SelectMany(ladder => OfExitPupils(ladder, kit.Problem.Observer)),
        .. kit.Ladders.SelectMany(OfWeight),
        .. kit.Ladders.SelectMany(ladder => OfEyeRelief(ladder, kit)),
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

    private static IEnumerable<Remark> OfExitPupils(Ladder ladder, Observer observer) => ladder.Usable.IsEmpty ? [] :
    [
        .. OfNarrowest(ladder.Usable.MinBy(view => NarrowestExitPupilMm(view.View))!.View, observer),
        .. OfWidest(ladder.Usable.MaxBy(view => view.View.ExitPupilMm)!.View, observer),
    ];

    /// <summary>What bears a narrow exit pupil bears this one.</summary>
    private static IEnumerable<Remark> OfNarrowest(View view, Observer observer)
    {
        var exitPupil = RemarkValue.Millimetres("exitPupilMm", NarrowestExitPupilMm(view));
        var least = RemarkValue.Millimetres(
            "leastMm", observer.ObservesBrightThings ? PowerRange.NarrowestBrightExitPupilMm : PowerRange.NarrowestExitPupilMm);
        return exitPupil.ReadsBelow(least)
            ? [new Remark(ExitPupilNarrow, [TelescopeOf(view), RemarkValue.Power("power", view.PowerAtShortest), exitPupil, least])]
            : [];
    }

    private static IEnumerable<Remark> OfWidest(View view, Observer observer)
    {
        var exitPupil = RemarkValue.Millimetres("exitPupilMm", view.ExitPupilMm);
        var pupil = RemarkValue.Millimetres("pupilMm", observer.DarkAdaptedPupilMm);
        return !pupil.ReadsBelow(exitPupil) ? [] :
        [
            new Remark(ExitPupilWide, [TelescopeOf(view), RemarkValue.Power("power", view.Power), exitPupil, pupil])
            {
                Variant = observer.PupilMm is not null ? null : observer.Age is not null ? OfAge : Usual,
            },
        ];
    }

    private static RemarkValue TelescopeOf(View view) => RemarkValue.Of("telescope", view.Telescope.Telescope.Name);

    /// <summary>A zoom's is narrowest at its shortest focal length.</summary>
    private static double NarrowestExitPupilMm(View view) => view.Telescope.Telescope.ApertureMm / view.PowerAtShortest;

    /// <summary>Of the heaviest that is ever in one focuser, as far as masses are known.</summary>
    private static IEnumerable<Remark> OfWeight(Ladder ladder)
    {
        var barrel = ladder.Telescope.Telescope.FocuserBarrel;
        if (ladder.Usable.MaxBy(KnownGrams) is not { } heaviest)
        {
            yield break;
        }

        var (mass, limit) = (RemarkValue.Grams("massGrams", KnownGrams(heaviest)), RemarkValue.Grams("limitGrams", HeavyGrams(barrel)));
        if (limit.ReadsBelow(mass))
        {
            yield return new Remark(HeavyForFocuser,
            [
                RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
                RemarkValue.Of("barrel", barrel),
                mass,
                limit,
                .. RemarkValue.ItemsOf(heaviest.Barlow is { } barlow ? [heaviest.Eyepiece, barlow] : [heaviest.Eyepiece]),
            ]);
        }
    }

    private static double KnownGrams(KitView view) => (view.Eyepiece.MassGrams ?? 0) + (view.Barlow?.MassGrams ?? 0);

    /// <summary>One for each need, the tightest first: whoever takes the spectacles off for some views needs less there.</summary>
    private static IEnumerable<Remark> OfEyeRelief(Ladder ladder, Kit kit) =>
        from view in ladder.Usable
        let needed = kit.Problem.Observer.NeededEyeReliefMm(view.View.ExitPupilMm, kit.Purchases.Contains(view.Eyepiece))
        where needed > 0 && Tolerance.Below(view.View.Ocular.EyeReliefMm, needed + EyeReliefMarginMm)
        group view.Eyepiece by needed into tight
        orderby tight.Key
        select new Remark(EyeReliefTight,
        [
            RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
            RemarkValue.Millimetres("neededMm", tight.Key),
            .. RemarkValue.ItemsOf([.. tight.Distinct().OrderBy(item => item.Ocular!.EyeReliefMm).ThenBy(item => item.Id, StringComparer.Ordinal)]),
        ]);

    private static IEnumerable<Remark> OfZooms(Kit kit)
    {
        var limit = RemarkValue.Degrees("narrowDeg", NarrowApparentFieldDeg);
        return
            from zoom in kit.Ladders.SelectMany(ladder => ladder.Usable).Select(view => view.Eyepiece).Distinct()
            where zoom.IsZoom
            let field = RemarkValue.Degrees("apparentFieldDeg", zoom.Ocular!.ApparentFieldAtLongestDeg)
            where field.ReadsBelow(limit)
            select new Remark(ZoomFieldNarrow, [.. RemarkValue.ItemOf(zoom), field, limit]);
    }
}
