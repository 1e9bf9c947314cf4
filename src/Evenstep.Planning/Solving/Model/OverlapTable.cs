using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>Choices which, all bought, make a number of views overlap. The indices ascend and differ.</summary>
internal readonly record struct Together(int First, int Second = -1, int Third = -1, int Fourth = -1)
{
    public static Together Of(PossibleView a, PossibleView b)
    {
        Span<int> indices = [Index(a.Eyepiece), Index(a.Barlow), Index(b.Eyepiece), Index(b.Barlow)];
        indices.Sort();
        Span<int> distinct = [-1, -1, -1, -1];
        var count = 0;
        foreach (var index in indices)
        {
            if (index >= 0 && (count == 0 || distinct[count - 1] != index))
            {
                distinct[count++] = index;
            }
        }

        return new Together(distinct[0], distinct[1], distinct[2], distinct[3]);

        static int Index(Choice? choice) => choice?.Index ?? -1;
    }

    public int Count => First < 0 ? 0 : Second < 0 ? 1 : Third < 0 ? 2 : Fourth < 0 ? 3 : 4;

    public int[] Indices => [.. new[] { First, Second, Third, Fourth }.Where(index => index >= 0)];
}

/// <summary>Every overlap in which a purchase takes part: how many pairs of views, over all telescopes, for which choices.</summary>
internal sealed class OverlapTable
{
    private readonly Dictionary<Together, int> pairs = [];

    private OverlapTable()
    {
    }

    public IReadOnlyDictionary<Together, int> Pairs => pairs;

    public static OverlapTable Of(PurchaseProblem problem, ImmutableArray<PossibleViews> telescopes)
    {
        var table = new OverlapTable();
        foreach (var views in telescopes)
        {
            table.AddFixed(problem, views);
            table.AddZooms(problem, views);
        }

        return table;
    }

    /// <summary>Whether the two are bought together in no set that allows no overlap.</summary>
    public bool Excludes(Choice a, Choice b) =>
        pairs.ContainsKey(a.Index < b.Index ? new Together(a.Index, b.Index) : new Together(b.Index, a.Index));

    /// <summary>
    /// Of views in order of power only those within the least step can overlap. Two views through Barlows overlap only if
    /// they are of one eyepiece, so those are looked at by themselves.
    /// </summary>
    private void AddFixed(PurchaseProblem problem, PossibleViews views)
    {
        var alone = Sorted(views.All.Where(view => !view.KitView.View.IsZoom && view.KitView.Barlow is null));
        var through = Sorted(views.All.Where(view => !view.KitView.View.IsZoom && view.KitView.Barlow is not null));
        AddNear(problem, alone, alone, i => i + 1);
        AddNear(problem, through, alone, _ => 0);
        foreach (var ofOneEyepiece in through.GroupBy(view => view.KitView.Eyepiece).Select(group => group.ToArray()))
        {
            AddNear(problem, ofOneEyepiece, ofOneEyepiece, i => i + 1);
        }
    }

    private void AddNear(PurchaseProblem problem, PossibleView[] firsts, PossibleView[] seconds, Func<int, int> startAt)
    {
        var reach = problem.Preferences.LeastStep;
        var near = 0;
        for (var i = 0; i < firsts.Length; i++)
        {
            var power = firsts[i].KitView.View.CutPower;
            while (near < seconds.Length && seconds[near].KitView.View.CutPower * reach < power)
            {
                near++;
            }

            for (var j = Math.Max(near, startAt(i)); j < seconds.Length && seconds[j].KitView.View.CutPower <= power * reach; j++)
            {
                Add(problem, firsts[i], seconds[j]);
            }
        }
    }

    private void AddZooms(PurchaseProblem problem, PossibleViews views)
    {
        PossibleView[] zooms = [.. views.All.Where(view => view.KitView.View.IsZoom)];
        for (var i = 0; i < zooms.Length; i++)
        {
            for (var j = i + 1; j < zooms.Length; j++)
            {
                Add(problem, zooms[i], zooms[j]);
            }
        }
    }

    private void Add(PurchaseProblem problem, PossibleView a, PossibleView b)
    {
        var both = Together.Of(a, b);
        if (both.Count > 0 && Overlap.Between(a.KitView.Showing, b.KitView.Showing, problem.Preferences.LnLeastStep))
        {
            pairs[both] = pairs.GetValueOrDefault(both) + 1;
        }
    }

    private static PossibleView[] Sorted(IEnumerable<PossibleView> views) => [.. views.OrderBy(view => view.KitView.View.CutPower)];
}
