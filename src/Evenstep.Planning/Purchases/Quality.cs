using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// How good a usable view is, in quarters from 0 to <see cref="Whole"/>: by what speaks against it, and by what the request
/// prefers. All thresholds are common practice, no source.
/// </summary>
public static class Quality
{
    /// <summary>Of a view that leaves nothing to wish for.</summary>
    public const int Whole = 4;

    private const int Half = 2;

    private static readonly ImmutableArray<double> FieldStepsDeg = [50, 60, 70, 82];
    private static readonly ImmutableArray<double> EyeReliefStepsMm = [8, 12, 15, 18];
    private static readonly ImmutableArray<int> EveryLevel = [1, 2, 3, 4];
    private static readonly ImmutableArray<int> LevelsOfComfort = [Half, Whole];

    /// <summary>The qualities above 0 that a view can have; each counts as much as it lies above the one before.</summary>
    public static ImmutableArray<int> Levels(Prefer prefer) =>
        prefer is Prefer.WideField or Prefer.LongEyeRelief ? EveryLevel : LevelsOfComfort;

    /// <summary>In quarters.</summary>
    /// <param name="prefer">What the request prefers.</param>
    /// <param name="ocular">What is looked into.</param>
    /// <param name="drawbacks">Of the view.</param>
    public static int Of(Prefer prefer, Ocular ocular, Drawbacks drawbacks)
    {
        var byDrawbacks = drawbacks == Drawbacks.None ? Whole : int.IsPow2((int)drawbacks) ? Half : 0;
        return prefer switch
        {
            Prefer.WideField => Math.Min(byDrawbacks, StepsUpTo(ocular.ApparentFieldAtLongestDeg, FieldStepsDeg)),
            Prefer.LongEyeRelief => Math.Min(byDrawbacks, StepsUpTo(ocular.EyeReliefMm, EyeReliefStepsMm)),
            _ => byDrawbacks,
        };
    }

    private static int StepsUpTo(double value, ImmutableArray<double> steps)
    {
        var count = 0;
        foreach (var step in steps)
        {
            count += Tolerance.AtLeast(value, step) ? 1 : 0;
        }

        return count;
    }
}
