namespace Evenstep.Planning.Optics;

/// <summary>The least and the most that a quantity may be, both included.</summary>
public readonly record struct Bounds(double Least, double Most)
{
    public static readonly Bounds ApertureMm = new(30, 2000);
    public static readonly Bounds TelescopeFocalLengthMm = new(100, 20000);
    public static readonly Bounds EyepieceFocalLengthMm = new(1.5, 100);
    public static readonly Bounds ApparentFieldDeg = new(10, 130);
    public static readonly Bounds EyeReliefMm = new(0, 60);
    public static readonly Bounds FieldStopMm = new(1, 60);
    public static readonly Bounds FocalRatio = new(2, 20);
    public static readonly Bounds BarlowFactor = new(1.1, 6);
    public static readonly Bounds AgeYears = new(5, 110);
    public static readonly Bounds PupilMm = new(1, 9);
    public static readonly Bounds CylinderDioptres = new(-6, 6);
    public static readonly Bounds SeeingArcsec = new(0.2, 10);
    public static readonly Bounds Power = new(1, 5000);
    public static readonly Bounds LeastStep = new(1, 1.5);
    public static readonly Bounds EnoughStep = new(1, 4);
    public static readonly Bounds WidthDeg = new(0.01, 20);
    public static readonly Bounds TargetWidthArcmin = new(0.01, 1200);
    public static readonly Bounds WantedExitPupilMm = new(0.1, 9);
    public static readonly Bounds MassGrams = new(1, 10000);
    public static readonly Bounds Price = new(0, 100000);
    public static readonly Bounds Budget = new(0, 1000000);

    /// <summary>Whether the value lies within; NaN and the infinities never do.</summary>
    public bool Contain(double value) => value >= Least && value <= Most;

    /// <summary>The value itself, if it lies within.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN, infinite or out of bounds.</exception>
    public double Check(double value, string name) => Contain(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, value, $"{name} must be from {Least} to {Most}.");
}
