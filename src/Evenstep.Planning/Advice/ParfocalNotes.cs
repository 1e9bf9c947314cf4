using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Which eyepieces and zooms of a kit keep the focus when one is changed for another.</summary>
internal static class ParfocalNotes
{
    public static ImmutableArray<Remark> Of(Kit kit) => [.. Preferred(kit), .. NotWithOwned(kit)];

    /// <summary>Where parfocal eyepieces are preferred: which are, or that none is.</summary>
    private static IEnumerable<Remark> Preferred(Kit kit)
    {
        Item[] oculars = [.. kit.Items.Where(item => item is { Ocular: not null, IsReticle: false }).Distinct()];
        if (kit.Problem.Preferences.Prefer != Prefer.Parfocal || oculars.Length < 2)
        {
            return [];
        }

        ImmutableArray<Item>[] groups =
        [
            .. oculars.Where(item => item.ParfocalGroup is not null).GroupBy(item => item.ParfocalGroup, StringComparer.Ordinal)
                .Select(group => group.ToImmutableArray()).Where(group => group.Length > 1),
        ];
        return groups.Length == 0
            ? [new Remark(PlanNotes.Parfocal, []) { Variant = PlanNotes.NoneParfocal }]
            : groups.Select(group => new Remark(PlanNotes.Parfocal, [.. RemarkValue.ItemsOf(group)]));
    }

    /// <summary>Purchases of a known parfocal group that none of the owned eyepieces and zooms belongs to, though some of those
    /// belong to a known one.</summary>
    private static IEnumerable<Remark> NotWithOwned(Kit kit)
    {
        var ownedGroups = kit.Problem.Owned.Where(item => item.Ocular is not null).Select(item => item.ParfocalGroup).OfType<string>().ToHashSet();
        ImmutableArray<Item> apart =
            [.. kit.Purchases.Where(item => item.Ocular is not null && item.ParfocalGroup is { } group && !ownedGroups.Contains(group))];
        return ownedGroups.Count == 0 || apart.IsEmpty ? [] : [new Remark(PlanNotes.NotParfocal, [.. RemarkValue.ItemsOf(apart)])];
    }
}
