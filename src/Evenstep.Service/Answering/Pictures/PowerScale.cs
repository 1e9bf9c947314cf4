using Evenstep.Planning.Optics;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>
/// Lays powers out from left to right by their logarithm, so that equal ratios are equally long. Beyond either end of the
/// range there is room for the views that still count as that end.
/// </summary>
internal sealed class PowerScale(PowerRange range)
{
    private readonly double lnFrom = Math.Log(range.Lowest / PowerRange.GraceBelow);
    private readonly double lnTo = Math.Log(range.Highest * PowerRange.GraceAbove);

    /// <summary>The place of a power; of one beyond the scale, the end.</summary>
    public double XOf(double power) => Math.Clamp(Unclipped(power), Sheet.Left, Sheet.Right);

    public bool Holds(double power) => Unclipped(power) is >= Sheet.Left and <= Sheet.Right;

    /// <summary>The place of a power, which may be off the scale.</summary>
    public double Unclipped(double power) => Sheet.Left + ((Sheet.Right - Sheet.Left) * (Math.Log(power) - lnFrom) / (lnTo - lnFrom));
}
