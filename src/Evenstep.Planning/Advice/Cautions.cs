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
    public static ImmutableArray<Remark> Of(Kit kit) => OfViews(kit, [.. kit.Ladders.Select(ladder => ladder.Usable)]);

    /// <summary>The same, of the views only that need a purchase.</summary>
    public static ImmutableArray<Remark> OfPurchases(Kit kit) =>
        OfViews(kit, [.. kit.Ladders.Select(ladder => ladder.Usable.RemoveAll(view => !view.NeedsPurchase))]);

    /// <param name="kit">The kit.</param>
    /// <param name="usable">The usable views that count, by the telescopes.</param>
    private static ImmutableArray<Remark> OfViews(Kit kit, ImmutableArray<ImmutableArray<KitView>> usable) =>
    [
        new Remark(Sun, []),
        .. OfEyesight(kit.Problem.Observer),
        .. usable.SelectMany(views => OfExitPupils(views, kit.Problem.Observer)),
        .. usable.SelectMany(OfWeight),
        .. usable.SelectMany(views => OfEyeRelief(views, kit)),
        .. OfZooms(usable.SelectMany(views => views)),
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

    private static IEnumerable<Remark> OfExitPupils(ImmutableArray<KitView> views, Observer observer) => views.IsEmpty ? [] :
    [
        .. OfNarrowest(views.MinBy(view => NarrowestExitPupilMm(view.View))!.View, observer),
        .. OfWidest(views.MaxBy(view => view.View.ExitPupilMm)!.View, observer),
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
    private static IEnumerable<Remark> OfWeight(ImmutableArray<KitView> views)
    {
        if (views.MaxBy(KnownGrams) is not { } heaviest)
        {
            yield break;
        }

        var barrel = heaviest.View.Telescope.Telescope.FocuserBarrel;
        var (mass, limit) = (RemarkValue.Grams("massGrams", KnownGrams(heaviest)), RemarkValue.Grams("limitGrams", HeavyGrams(barrel)));
        if (limit.ReadsBelow(mass))
        {
            yield return new Remark(HeavyForFocuser,
            [
                TelescopeOf(heaviest.View),
                RemarkValue.Of("barrel", barrel),
                mass,
                limit,
                .. RemarkValue.ItemsOf(heaviest.Barlow is { } barlow ? [heaviest.Eyepiece, barlow] : [heaviest.Eyepiece]),
            ]);
        }
    }

    private static double KnownGrams(KitView view) => (view.Eyepiece.MassGrams ?? 0) + (view.Barlow?.MassGrams ?? 0);

    /// <summary>One for each need, the tightest first: whoever takes the spectacles off for some views needs less there.</summary>
    private static IEnumerable<Remark> OfEyeRelief(ImmutableArray<KitView> views, Kit kit) =>
        from view in views
        let needed = kit.Problem.Observer.NeededEyeReliefMm(view.View.ExitPupilMm, kit.Purchases.Contains(view.Eyepiece))
        where needed > 0 && Tolerance.Below(view.View.Ocular.EyeReliefMm, needed + EyeReliefMarginMm)
        group view by needed into tight
        orderby tight.Key
        select new Remark(EyeReliefTight,
        [
            TelescopeOf(tight.First().View),
            RemarkValue.Millimetres("neededMm", tight.Key),
            .. RemarkValue.ItemsOf(
            [
                .. tight.Select(view => view.Eyepiece).Distinct()
                    .OrderBy(item => item.Ocular!.EyeReliefMm).ThenBy(item => item.Id, StringComparer.Ordinal),
            ]),
        ]);

    private static IEnumerable<Remark> OfZooms(IEnumerable<KitView> views)
    {
        var limit = RemarkValue.Degrees("narrowDeg", NarrowApparentFieldDeg);
        return
            from zoom in views.Select(view => view.Eyepiece).Distinct()
            where zoom.IsZoom
            let field = RemarkValue.Degrees("apparentFieldDeg", zoom.Ocular!.ApparentFieldAtLongestDeg)
            where field.ReadsBelow(limit)
            select new Remark(ZoomFieldNarrow, [.. RemarkValue.ItemOf(zoom), field, limit]);
    }
}
