using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// What decides an item's views and the demands it meets, when bought: two items of equal likeness can stand in for each
/// other in every kit, and only price and preference tell them apart. It is what the item is made like, and how the
/// observer's needs judge it, with spectacles on and off (two thresholds are all that its eye relief is ever compared with).
/// </summary>
public readonly record struct Likeness
{
    private Likeness(Make make, int judgement) => (Make, Judgement) = (make, judgement);

    private Make Make { get; }

    private int Judgement { get; }

    public static Likeness Of(PurchaseProblem problem, Item item) =>
        new(item.Make, item.IsReticle || item.Ocular is not { } ocular ? 0 : Judge(problem, ocular));

    private static int Judge(PurchaseProblem problem, Ocular ocular)
    {
        var (spectaclesOn, spectaclesOff) =
            (problem.Observer.NeededEyeReliefMm(double.MaxValue, bought: true), problem.Observer.NeededEyeReliefMm(0, bought: true));
        return (Tolerance.AtLeast(ocular.EyeReliefMm, spectaclesOn) ? 1 : 0)
            + (Tolerance.AtLeast(ocular.EyeReliefMm, spectaclesOff) ? 2 : 0)
            + (Tolerance.AtLeast(ocular.ApparentFieldAtLongestDeg, problem.Preferences.LeastApparentFieldDeg ?? 0) ? 4 : 0);
    }
}
