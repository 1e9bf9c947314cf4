using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What whoever wears spectacles should know of a kit: where they may come off, and with which eyepieces they must.</summary>
public static class SpectaclesCautions
{
    /// <summary>They come off at no power that the kit has.</summary>
    public const string KeptOn = "kept-on";

    /// <summary>They may come off at some powers, or at all.</summary>
    public const string ComeOff = "come-off";

    internal static ImmutableArray<Remark> Of(Kit kit)
    {
        var observer = kit.Problem.Observer;
        return observer.WearsSpectacles ? [OfEyesight(kit), .. kit.Ladders.SelectMany(OfMust)]
            : observer.AstigmatismDioptres is not null ? [new Remark(Cautions.Eyesight, [])]
            : [];

        IEnumerable<Remark> OfMust(Ladder ladder)
        {
            KitView[][] off =
            [
                .. ladder.Usable.Where(view => observer.MustTakeSpectaclesOff(view.View.ExitPupilMm, view.View.Ocular.EyeReliefMm))
                    .GroupBy(view => view.Eyepiece).Select(group => group.ToArray()),
            ];
            return off.Length == 0 ? [] :
            [
                new Remark(Cautions.SpectaclesOff,
                [
                    RemarkValue.Of("telescope", ladder.Telescope.Telescope.Name),
                    .. RemarkValue.ItemsOf([.. off.Select(views => views[0].Eyepiece)]),
                    new RemarkValue("powers", off.Select(views => views.Select(view => view.View.Power).ToArray()).ToArray(), 1),
                    new RemarkValue("powersAtShortest", off.Select(AtShortest).ToArray(), 1),
                ]),
            ];
        }
    }

    private static object?[] AtShortest(KitView[] views) =>
        [.. views.Select(view => view.View.IsZoom ? (object)view.View.PowerAtShortest : null)];

    private static Remark OfEyesight(Kit kit)
    {
        if (!kit.Figures.HasViews)
        {
            return new Remark(Cautions.Eyesight, []);
        }

        var observer = kit.Problem.Observer;
        Ladder[] off = [.. kit.Ladders.Where(ladder => ladder.Usable.Any(view => observer.AreSpectaclesOff(NarrowestExitPupilMm(view))))];
        return off.Length == 0 ? new Remark(Cautions.Eyesight, []) { Variant = KeptOn } : new Remark(Cautions.Eyesight,
        [
            RemarkValue.Of("telescopes", off.Select(ladder => ladder.Telescope.Telescope.Name).ToArray()),
            new RemarkValue("fromPowers", off.Select(FromPower).ToArray(), 1),
        ])
        {
            Variant = ComeOff,
        };

        object? FromPower(Ladder ladder) => ladder.Usable.All(view => observer.AreSpectaclesOff(view.View.ExitPupilMm)) ? null
            : ladder.Telescope.Telescope.ApertureMm / observer.SpectaclesOffUpToExitPupilMm;
    }

    /// <summary>A zoom's is narrowest at its shortest focal length.</summary>
    private static double NarrowestExitPupilMm(KitView view) => view.View.Telescope.Telescope.ApertureMm / view.View.PowerAtShortest;
}
