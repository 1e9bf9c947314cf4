using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>
/// Keeps <see cref="OverlapRule"/>. What a choice brings by itself is counted from the beginning; pairs of choices are counted
/// as sets that have them are found.
/// </summary>
internal static class OverlapCount
{
    public static void Keep(Master master)
    {
        var settled = master.Settled;
        if (settled.AllowedOverlaps == 0)
        {
            return;
        }

        int[] overlapping = [.. Enumerable.Range(0, settled.Choices.Length).Where(index => settled.OverlapsOf(index) > 0)];
        var own = LinearExpr.WeightedSum(overlapping.Select(master.Chosen), overlapping.Select(index => settled.OverlapsOf(index)));
        master.Overlaps = master.Cp.Add(own <= settled.AllowedOverlaps - settled.OverlapsOfNothing).Proto.Linear;
    }

    /// <summary>Counts the pairs of two choices too; if they are too many alone, the two are not bought together.</summary>
    public static void Count(Master master, Clash clash)
    {
        var settled = master.Settled;
        var (one, other) = (master.Chosen(clash.One), master.Chosen(clash.Other));
        if (settled.OverlapsOf(clash.One) + settled.OverlapsOf(clash.Other) + clash.Pairs > settled.AllowedOverlaps - settled.OverlapsOfNothing)
        {
            master.Cp.AddAtMostOne([one, other]);
            return;
        }

        var both = master.Cp.NewBoolVar("");
        master.Cp.AddBoolOr([one.Not(), other.Not(), both]);
        master.Overlaps!.Vars.Add(both.GetIndex());
        master.Overlaps.Coeffs.Add(clash.Pairs);
    }
}
