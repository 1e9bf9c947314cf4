using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Kits;

/// <summary>What is worth saying of any kit: warnings, and what sets its limits.</summary>
internal static class KitRemarks
{
    public static IReadOnlyList<RemarkAnswer> CautionsOf(Kit kit) =>
        [.. Cautions(kit).Select(caution => Phrase.Of("caution", caution))];

    /// <summary>A note for each telescope whose lowest power the focuser sets.</summary>
    public static IEnumerable<RemarkAnswer> RangesSetByBarrel(PurchaseProblem problem) =>
        from telescope in problem.Telescopes
        where telescope.Range.LowestSetBy == RangeEnd.Barrel
        select Phrase.Of("note", new Remark("range-set-by-barrel",
        [
            RemarkValue.Of("telescope", telescope.Telescope.Name),
            RemarkValue.Power("lowest", telescope.Range.Lowest),
        ]));

    private static IEnumerable<Remark> Cautions(Kit kit)
    {
        var observer = kit.Problem.Observer;
        yield return new Remark("sun", []);
        if (observer.WearsSpectacles || observer.AstigmatismDioptres is not null)
        {
            yield return new Remark("eyesight", []);
        }

        var usable = kit.Ladders.SelectMany(ladder => ladder.Usable).ToList();
        var narrowest = usable.MinBy(view => NarrowestExitPupilMm(view.View));
        if (narrowest is not null && Tolerance.Below(NarrowestExitPupilMm(narrowest.View), PowerRange.NarrowestExitPupilMm))
        {
            yield return ExitPupil("exit-pupil-narrow", narrowest.View.PowerAtShortest, NarrowestExitPupilMm(narrowest.View), "leastMm", PowerRange.NarrowestExitPupilMm);
        }

        var widest = usable.MaxBy(view => view.View.ExitPupilMm);
        if (widest is not null && Tolerance.Above(widest.View.ExitPupilMm, observer.DarkAdaptedPupilMm))
        {
            yield return ExitPupil("exit-pupil-wide", widest.View.Power, widest.View.ExitPupilMm, "pupilMm", observer.DarkAdaptedPupilMm);
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
}
