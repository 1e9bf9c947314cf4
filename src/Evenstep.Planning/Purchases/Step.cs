using System.Diagnostics.CodeAnalysis;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// A step: a ratio of powers, from 1 up; between neighbouring views as it counts, that is weighed by exit pupil. Kept as its
/// logarithm, which is a distance between positions on the axis of powers.
/// </summary>
/// <param name="Ln">The natural logarithm of the ratio, from 0 up; infinite where no step is too large.</param>
[SuppressMessage("Naming", "CA1716", Justification = "A keyword of Visual Basic only, and the word of the trade.")]
public readonly record struct Step(double Ln)
{
    /// <summary>No step is larger.</summary>
    public static readonly Step Unlimited = new(double.PositiveInfinity);

    /// <summary>The step of a ratio of powers, from 1 up.</summary>
    public static Step Of(double ratio) => new(Math.Log(ratio));

    /// <summary>The step in whose middle the mismatch, in position, is this.</summary>
    public static Step OfMismatch(double mismatch) => new(2 * mismatch);

    public double Ratio => Math.Exp(Ln);

    /// <summary>The mismatch in its middle, in position.</summary>
    public double Half => Ln / 2;

    /// <summary>The largest that is still <see cref="AtMost"/> this.</summary>
    public Step WithTolerance => new(Ln + Tolerance.Value);

    /// <summary>How many times as large as another its ratio is.</summary>
    public double Over(Step other) => Math.Exp(Ln - other.Ln);

    /// <summary>The ratio to the power of a factor.</summary>
    public Step Widened(double factor) => new(factor * Ln);

    public static Step Max(Step a, Step b) => new(Math.Max(a.Ln, b.Ln));

    public static Step Min(Step a, Step b) => new(Math.Min(a.Ln, b.Ln));

    public bool AtMost(Step other) => Tolerance.AtMost(Ln, other.Ln);

    public bool Below(Step other) => Tolerance.Below(Ln, other.Ln);

    public bool Above(Step other) => Tolerance.Above(Ln, other.Ln);

    /// <summary>Its logarithm.</summary>
    public override string ToString() => $"{Ln}";
}
