using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What to beware of with a kit. A limit is passed only if that can still be read once both are rounded for reading.</summary>
public static class Cautions
{
    public const string Sun = "sun";
    public const string Eyesight = "eyesight";
    public const string SpectaclesOff = "spectacles-off";
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
        [Sun, Eyesight, SpectaclesOff, ExitPupilNarrow, ExitPupilWide, HeavyForFocuser, EyeReliefTight, ZoomFieldNarrow];

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
        .. SpectaclesCautions.Of(kit),
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

    private static IEnumerable<Remark> OfExitPupils(ImmutableArray<KitView> views, Observer observer) => views.IsEmpty ? [] :
    [
        .. OfNarrowest(views.MaxBy(view => HighestUsedPower(view.View))!, observer),
        .. OfWidest(views.MinBy(view => LowestUsedPower(view.View))!, observer),
    ];

    /// <summary>What bears a narrow exit pupil bears this one.</summary>
    private static IEnumerable<Remark> OfNarrowest(KitView view, Observer observer)
    {
        var power = HighestUsedPower(view.View);
        var exitPupil = RemarkValue.Millimetres("exitPupilMm", ExitPupilMm(view, power));
        var least = RemarkValue.Millimetres(
            "leastMm", observer.ObservesBrightThings ? PowerRange.NarrowestBrightExitPupilMm : PowerRange.NarrowestExitPupilMm);
        return exitPupil.ReadsBelow(least)
            ? [new Remark(ExitPupilNarrow, [TelescopeOf(view), RemarkValue.Power("power", power), exitPupil, least, .. ItemsIn(view)])]
            : [];
    }

    /// <summary>One that is hardly wider than the eye's pupil loses no light that anybody sees.</summary>
    private static IEnumerable<Remark> OfWidest(KitView view, Observer observer)
    {
        var power = LowestUsedPower(view.View);
        var exitPupil = RemarkValue.Millimetres("exitPupilMm", ExitPupilMm(view, power));
        var pupil = RemarkValue.Millimetres("pupilMm", observer.DarkAdaptedPupilMm);
        return !Tolerance.Above(ExitPupilMm(view, power) / observer.DarkAdaptedPupilMm, DrawbackLimits.ExitPupilRatio) ? [] :
        [
            new Remark(ExitPupilWide, [TelescopeOf(view), RemarkValue.Power("power", power), exitPupil, pupil, .. ItemsIn(view)])
            {
                Variant = observer.PupilMm is not null ? null : observer.Age is not null ? OfAge : Usual,
            },
        ];
    }

    private static RemarkValue TelescopeOf(KitView view) => RemarkValue.Of("telescope", view.View.Telescope.Telescope.Name);

    private static RemarkValue[] ItemsIn(KitView view) => RemarkValue.ItemsOf(view.Barlow is { } barlow ? [view.Eyepiece, barlow] : [view.Eyepiece]);

    private static double ExitPupilMm(KitView view, double power) => view.View.Telescope.Telescope.ApertureMm / power;

    /// <summary>A zoom need not be turned past the range.</summary>
    private static double HighestUsedPower(View view) => Math.Max(view.Power, Math.Min(view.PowerAtShortest, view.Telescope.Range.Highest));

    /// <summary>Nor need it be at the low end.</summary>
    private static double LowestUsedPower(View view) => view.IsZoom ? Math.Clamp(view.Telescope.Range.Lowest, view.Power, view.PowerAtShortest) : view.Power;

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
                TelescopeOf(heaviest),
                RemarkValue.Of("barrel", barrel),
                mass,
                limit,
                .. ItemsIn(heaviest),
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
            TelescopeOf(tight.First()),
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
