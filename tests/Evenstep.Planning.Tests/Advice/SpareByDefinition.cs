using System.Numerics;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>What is spare, word for word as it is defined, by kits of what is left.</summary>
internal static class SpareByDefinition
{
    private const double Tiny = 1e-9;

    public static bool IsAsGood(Kit kit, IReadOnlyCollection<Item> given)
    {
        var left = Kit.Of(kit.Problem with { Owned = [.. kit.Problem.Owned.Where(item => !given.Contains(item))] }, kit.Purchases);
        var counted = Enumerable.Range(0, kit.Ladders.Length).Where(t => kit.Ladders[t].Usable.Length > 0).DefaultIfEmpty(-1).ToList();
        int[] telescopes = counted[0] < 0 ? [.. Enumerable.Range(0, kit.Ladders.Length)] : [.. counted];
        var enough = Math.Log(kit.Problem.Preferences.EnoughStep);
        var (before, after) = (telescopes.Select(t => kit.Ladders[t].Figures).ToList(), telescopes.Select(t => left.Ladders[t].Figures).ToList());
        return Math.Max(enough, after.Max(one => one.LargestStep.Ln)) <= Math.Max(enough, before.Max(one => one.LargestStep.Ln)) + Tiny
            && after.Average(one => one.MeanExcess) <= before.Average(one => one.MeanExcess) + 0.005 + Tiny
            && after.Average(one => one.ComfortableShare) >= before.Average(one => one.ComfortableShare) - 0.01 - Tiny
            && Enumerable.Range(0, kit.Ladders.Length).All(t => (left.WidestFieldDeg(t) ?? 0) + Tiny >= 0.98 * (kit.WidestFieldDeg(t) ?? 0))
            && MeetsDemands(kit, left, given);
    }

    /// <summary>Also whether there were several as large, of which the price decided.</summary>
    public static (IReadOnlyList<string> Ids, bool IsByPrice) LargestSet(Kit kit)
    {
        var owned = kit.Problem.Owned;
        var sets = Enumerable.Range(0, 1 << owned.Length)
            .OrderByDescending(mask => BitOperations.PopCount((uint)mask))
            .Select(mask => owned.Where((_, i) => (mask & (1 << i)) != 0).ToList());
        List<List<Item>> largest = [];
        foreach (var set in sets)
        {
            if (largest.Count > 0 && set.Count < largest[0].Count)
            {
                break;
            }

            if (IsAsGood(kit, set))
            {
                largest.Add(set);
            }
        }

        var dearest = largest.Max(set => set.Sum(item => item.Price));
        var ids = largest.Where(set => set.Sum(item => item.Price) == dearest).Select(set => set.Select(item => item.Id).ToList())
            .OrderBy(set => string.Join('\0', set), StringComparer.Ordinal).First();
        return (ids, largest.Exists(set => set.Sum(item => item.Price) != dearest));
    }

    private static bool MeetsDemands(Kit kit, Kit left, IReadOnlyCollection<Item> given)
    {
        var framed = kit.Problem.Demands.MustFrame.All(framing =>
            FramingRule.Frames(left, framing.WidthDeg, framing.TelescopeIndex) || !FramingRule.Frames(kit, framing.WidthDeg, framing.TelescopeIndex));
        return framed && (kit.Problem.Demands.ReticleLeastPower is not { } least
            || (!given.Any(item => item.IsReticle) && (Reaches(left, least) || !Reaches(kit, least))));
    }

    private static bool Reaches(Kit kit, double power) => kit.ReticlePower() is { } highest && Tolerance.AtLeast(highest / power, 1);
}
