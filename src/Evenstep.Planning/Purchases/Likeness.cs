using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// What decides an item's views, how good they are, and the demands it meets, when bought: two items of equal likeness can
/// stand in for each other in every kit, and only price and preference tell them apart. It is what the item is made like, and
/// how it is judged: by thresholds of eye relief, with spectacles on and off, by thresholds of its apparent field, and by the
/// steepest cone that it is made for, unless no telescope gives it a steeper one.
/// </summary>
public readonly record struct Likeness
{
    private Likeness(Make make, int judgement, double fastestFocalRatio) =>
        (Make, Judgement, FastestFocalRatio) = (make, judgement, fastestFocalRatio);

    private Make Make { get; }

    private int Judgement { get; }

    /// <summary>0 where no cone is too steep.</summary>
    private double FastestFocalRatio { get; }

    public static Likeness Of(PurchaseProblem problem, Item item)
    {
        var judgesQuality = problem.Preferences.Prefer != Prefer.LowPrice && !item.IsReticle;
        return new(
            item.Make,
            item.IsReticle || item.Ocular is not { } ocular ? 0 : Judge(problem, ocular, judgesQuality),
            judgesQuality && problem.Telescopes.Any(telescope => item.Optic.IsTooSimpleFor(telescope.Telescope.FocalRatio))
                ? item.Optic.FastestFocalRatio!.Value
                : 0);
    }

    private static int Judge(PurchaseProblem problem, Ocular ocular, bool judgesQuality)
    {
        var observer = problem.Observer;
        var usable = Bit(0, ocular.EyeReliefMm, observer.NeededEyeReliefMm(double.MaxValue, bought: true))
            | Bit(1, ocular.EyeReliefMm, observer.NeededEyeReliefMm(0, bought: true))
            | Bit(2, ocular.ApparentFieldAtLongestDeg, problem.Preferences.LeastApparentFieldDeg ?? 0);
        return !judgesQuality ? usable : usable
            | Bit(3, ocular.EyeReliefMm, observer.ComfortableEyeReliefAtMm(double.MaxValue) + DrawbackLimits.SpareEyeReliefMm)
            | Bit(4, ocular.EyeReliefMm, observer.ComfortableEyeReliefAtMm(0) + DrawbackLimits.SpareEyeReliefMm)
            | Bit(5, ocular.ApparentFieldAtLongestDeg, DrawbackLimits.NarrowFieldDeg)
            | (Quality.Of(problem.Preferences.Prefer, ocular, Drawbacks.None) << 6);
    }

    private static int Bit(int place, double value, double threshold) => (Tolerance.AtLeast(value, threshold) ? 1 : 0) << place;
}
