using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>What one telescope of a kit shows: every view the barrels allow, by power.</summary>
public sealed class Ladder
{
    private readonly MismatchLimits limits;
    private readonly Step leastStep;

    internal Ladder(TelescopeInUse telescope, ImmutableArray<KitView> views, MismatchLimits limits, Step leastStep)
    {
        this.limits = limits;
        this.leastStep = leastStep;
        Telescope = telescope;
        Views = views;
        Usable = [.. views.Where(view => view.IsUsable)];
        Figures = LadderFigures.Of(
            Usable.Select(view => view.Reach), Usable.Where(view => view.IsComfortable).Select(view => view.Reach), telescope.Axis.Length, limits);
    }

    public TelescopeInUse Telescope { get; }

    /// <summary>By power, then the ids of eyepiece and Barlow, then factor.</summary>
    public ImmutableArray<KitView> Views { get; }

    public ImmutableArray<KitView> Usable { get; }

    public LadderFigures Figures { get; }

    /// <summary>What is left to see without one item.</summary>
    public Ladder Without(Item item) => new(Telescope, Views.RemoveAll(view => view.Needs(item)), limits, leastStep);

    /// <summary>So many overlaps of one telescope are told in full; of more, how many there are.</summary>
    public const int MostOverlapsTold = 1000;

    /// <summary>Every pair of usable views that repeat one another, lower power first.</summary>
    public IEnumerable<OverlappingPair> Overlaps()
    {
        for (var i = 0; i < Usable.Length; i++)
        {
            for (var j = i + 1; j < Usable.Length; j++)
            {
                if (IsBeyond(Usable[i].Showing, Usable[j].Showing))
                {
                    break;
                }

                if (Overlap.Between(Usable[i].Showing, Usable[j].Showing, leastStep))
                {
                    yield return new OverlappingPair(Usable[i], Usable[j]);
                }
            }
        }
    }

    /// <summary>Whether no view from the second on repeats the first: views lie by power, and one that is no zoom repeats only what is close.</summary>
    private bool IsBeyond(in Showing first, in Showing second) =>
        !first.IsZoom && second.LnCutPower - first.LnCutPower > Overlap.MostDistance(first, leastStep);

    /// <summary>The jumps between neighbouring usable views, the jumps at both ends included; none of no length.</summary>
    public IEnumerable<Jump> Jumps()
    {
        if (Usable.IsEmpty)
        {
            yield break;
        }

        var reached = 0.0;
        var place = JumpPlace.LowEnd;
        foreach (var reach in Usable.Select(view => view.Reach).OrderBy(reach => reach.From))
        {
            if (Tolerance.Above(reach.From, reached))
            {
                yield return JumpAcross(reached, reach.From, place);
            }

            reached = Math.Max(reached, reach.To);
            place = JumpPlace.BetweenViews;
        }

        if (Tolerance.Above(Telescope.Axis.Length, reached))
        {
            yield return JumpAcross(reached, Telescope.Axis.Length, JumpPlace.HighEnd);
        }
    }

    /// <summary>The stretches of positions that usable views serve, in order; no two of them touch.</summary>
    public ImmutableArray<Reach> Served => Stretches.Near([.. Usable.Select(view => view.Reach)], limits.Served, Telescope.Axis.Length);

    private Jump JumpAcross(double from, double to, JumpPlace place) =>
        new(Telescope.Axis.PowerAt(from), Telescope.Axis.PowerAt(to), to - from, place);
}
