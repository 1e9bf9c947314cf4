using System.Runtime.InteropServices;
using Evenstep.Planning.Budgets;

namespace Evenstep.Planning.Purchases;

/// <summary>What is owned, worked out once for all items that are judged beside it one by one.</summary>
internal sealed class OwnedKit
{
    /// <summary>Of working a view out, and of comparing two.</summary>
    private const long StepsOfView = 60;
    private const long StepsOfComparison = 2;

    private readonly StepCounter? steps;
    private readonly Step leastStep;
    private readonly Lazy<Item[]> allBarlows;
    private readonly Item[] barlows;
    private readonly Item[] oculars;
    private readonly Showing[][] views;
    private readonly List<Showing> added = [];

    /// <param name="problem">Whose owned items they are.</param>
    /// <param name="steps">Counts the work; null if nobody does.</param>
    public OwnedKit(PurchaseProblem problem, StepCounter? steps)
    {
        (Problem, this.steps, leastStep) = (problem, steps, problem.LeastStep);
        allBarlows = new(() => [.. problem.Owned.Concat(problem.Catalogue).Where(item => item.IsBarlow).Distinct()]);
        barlows = [.. problem.Owned.Where(item => item.IsBarlow)];
        oculars = [.. problem.Owned.Where(item => item.Ocular is not null)];
        steps?.Count(StepsOfView * oculars.Length * (1 + barlows.Length) * problem.Telescopes.Length);
        var kit = Kit.Of(problem, []);
        views = [.. kit.Ladders.Select(ladder => ladder.Usable.Select(view => view.Showing).ToArray())];
        HasReticle = problem.Demands.ReticleLeastPower is { } asked && ReticleRule.Serves(kit, asked);
    }

    public PurchaseProblem Problem { get; }

    /// <summary>Whether a reticle eyepiece is asked for, and one that is owned reaches the power asked.</summary>
    public bool HasReticle { get; }

    /// <summary>Owned or for sale.</summary>
    public IReadOnlyCollection<Item> AllBarlows => allBarlows.Value;

    /// <summary>How many pairs of views overlap through an item once it is bought alone; counted up to the first that is too many.</summary>
    public int OverlapsThrough(Item item)
    {
        var count = 0;
        for (var t = 0; t < Problem.Telescopes.Length && OverlapRule.Left(Problem, count) >= 0; t++)
        {
            added.Clear();
            AddViews(t, item);
            for (var i = 0; i < added.Count && OverlapRule.Left(Problem, count) >= 0; i++)
            {
                steps?.Count(StepsOfView + (StepsOfComparison * (views[t].Length + i)));
                count += CountOverlaps(added[i], views[t]) + CountOverlaps(added[i], CollectionsMarshal.AsSpan(added)[..i]);
            }
        }

        return count;
    }

    private int CountOverlaps(in Showing view, ReadOnlySpan<Showing> others)
    {
        var count = 0;
        foreach (ref readonly var other in others)
        {
            count += Overlap.Between(view, other, leastStep) ? 1 : 0;
        }

        return count;
    }

    /// <summary>Notes the usable views that the item would add to what is owned.</summary>
    private void AddViews(int telescopeIndex, Item item)
    {
        var telescope = Problem.Telescopes[telescopeIndex];
        if (item.IsBarlow)
        {
            foreach (var ocular in oculars)
            {
                KitViews.AddUsable(Problem, telescope, ocular, ocularBought: false, item, added);
            }

            return;
        }

        KitViews.AddUsable(Problem, telescope, item, ocularBought: true, barlow: null, added);
        foreach (var barlow in barlows)
        {
            KitViews.AddUsable(Problem, telescope, item, ocularBought: true, barlow, added);
        }
    }
}
