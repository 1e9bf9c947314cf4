namespace Evenstep.Benchmarks.Problems;

/// <summary>A range to draw from.</summary>
internal readonly record struct Interval(double From, double To)
{
    public double Draw(Dice dice) => dice.Between(From, To);
}

/// <summary>A quantity that grows with another.</summary>
internal readonly record struct Law(double At0, double Slope)
{
    public double Of(double x) => At0 + (Slope * x);
}

/// <summary>
/// How a line of eyepieces is built, as invented as the demo catalogue's: a series of focal lengths, and all the rest from
/// the focal length f and the field stop S, both in mm.
/// </summary>
/// <param name="ApparentFieldDeg">Apparent field.</param>
/// <param name="FieldStopShare">S over apparent field times f: below 1, because distortion widens the apparent field.</param>
/// <param name="EyeReliefMm">By f.</param>
/// <param name="MassGrams">By S squared.</param>
/// <param name="Price">By S.</param>
/// <param name="Shortest">The shortest focal length of a line, in mm.</param>
/// <param name="Ratio">Of one focal length to the next.</param>
/// <param name="MostItems">In a line.</param>
internal sealed record Style(
    double ApparentFieldDeg, double FieldStopShare, Law EyeReliefMm, Law MassGrams, Law Price, Interval Shortest, Interval Ratio, int MostItems)
{
    public static readonly Style[] All =
    [
        Symmetrical, Narrow, FirstStepUp, ForPlanets, ForSpectacles, LowPowers, Wide, WideAndComfortable, VeryWide, Widest,
    ];

    private static Style Symmetrical => new(51, 0.97, new(0, 0.7), new(36, 0.11), new(26, 0.9), new(4, 6), new(1.25, 1.36), 10);

    private static Style Narrow => new(43, 0.98, new(0, 0.8), new(58, 0.25), new(74, 1.6), new(4, 5), new(1.22, 1.32), 7);

    private static Style FirstStepUp => new(60, 0.95, new(7, 0.45), new(92, 0.13), new(41, 1.1), new(2.8, 4), new(1.26, 1.36), 9);

    private static Style ForPlanets => new(58, 0.95, new(13, 0.35), new(128, 0.3), new(62, 2), new(2.4, 3.2), new(1.18, 1.26), 8);

    private static Style ForSpectacles => new(63, 0.95, new(16.5, 0.11), new(170, 0.16), new(92, 1.9), new(3.4, 4.5), new(1.24, 1.32), 10);

    private static Style LowPowers => new(69, 0.93, new(0, 0.55), new(170, 0.12), new(49, 1.4), new(20, 26), new(1.16, 1.24), 4);

    private static Style Wide => new(68, 0.94, new(6, 0.5), new(110, 0.15), new(68, 2.2), new(4, 6), new(1.2, 1.3), 10);

    private static Style WideAndComfortable => new(72, 0.94, new(18.5, 0.05), new(265, 0.25), new(198, 3.4), new(3.8, 5), new(1.22, 1.3), 8);

    private static Style VeryWide => new(83, 0.93, new(10, 0.25), new(210, 0.27), new(128, 3.1), new(3, 4.5), new(1.2, 1.3), 11);

    private static Style Widest => new(100, 0.92, new(12.5, 0.12), new(400, 0.35), new(365, 6.5), new(3.5, 5), new(1.24, 1.34), 8);
}
