using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// What decides an item's views and the demands it meets, when bought: two items of equal likeness can stand in for each
/// other in every kit, and only price and preference tell them apart. It holds the kind, the focal lengths or factors, the
/// barrel, what the true field is worked out from, and how the observer's needs judge the item, with spectacles on and off
/// (two thresholds are all that its eye relief is ever compared with).
/// </summary>
public sealed record Likeness
{
    private Likeness(Optic optic) => (Kind, Barrel) = (optic.GetType(), optic.Barrel);

    private Type Kind { get; }

    private Barrel Barrel { get; }

    private string Factors { get; init; } = "";

    private bool IsReticle { get; init; }

    private double Longest { get; init; }

    private double Shortest { get; init; }

    private double? FieldStop { get; init; }

    private double FieldAtLongest { get; init; }

    private double FieldAtShortest { get; init; }

    private int Judgement { get; init; }

    public static Likeness Of(PurchaseProblem problem, Item item) => item.Optic switch
    {
        Barlow barlow => new(barlow) { Factors = string.Join(' ', barlow.Factors) },
        Eyepiece { Purpose: EyepiecePurpose.Reticle } reticle => new(reticle) { IsReticle = true, Longest = reticle.FocalLengthMm },
        Ocular ocular => OfOcular(problem, ocular),
        _ => throw new ArgumentException($"{item.Optic.GetType()} is no optic known here.", nameof(item)),
    };

    private static Likeness OfOcular(PurchaseProblem problem, Ocular ocular)
    {
        var stop = (ocular as Eyepiece)?.FieldStopMm;
        return new Likeness(ocular)
        {
            Longest = ocular.LongestFocalLengthMm,
            Shortest = ocular.ShortestFocalLengthMm,
            FieldStop = stop,
            FieldAtLongest = stop is null ? ocular.ApparentFieldAtLongestDeg : 0,
            FieldAtShortest = (ocular as Zoom)?.ApparentFieldAtShortestDeg ?? 0,
            Judgement = Judge(problem, ocular),
        };
    }

    private static int Judge(PurchaseProblem problem, Ocular ocular)
    {
        var (spectaclesOn, spectaclesOff) =
            (problem.Observer.NeededEyeReliefMm(double.MaxValue, bought: true), problem.Observer.NeededEyeReliefMm(0, bought: true));
        return (Tolerance.AtLeast(ocular.EyeReliefMm, spectaclesOn) ? 1 : 0)
            + (Tolerance.AtLeast(ocular.EyeReliefMm, spectaclesOff) ? 2 : 0)
            + (Tolerance.AtLeast(ocular.ApparentFieldAtLongestDeg, problem.Preferences.LeastApparentFieldDeg ?? 0) ? 4 : 0);
    }
}
