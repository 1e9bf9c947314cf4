using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>What one telescope of a kit shows: every view the barrels allow, by power.</summary>
public sealed class Ladder
{
    private readonly double enough;
    private readonly double lnLeastStep;

    internal Ladder(TelescopeInUse telescope, ImmutableArray<KitView> views, double enough, double lnLeastStep)
    {
        this.enough = enough;
        this.lnLeastStep = lnLeastStep;
        Telescope = telescope;
        Views = views;
        Usable = [.. views.Where(view => view.IsUsable)];
        Figures = LadderFigures.Of(Usable.Select(view => view.Reach), telescope.Axis.Length, enough);
    }

    public TelescopeInUse Telescope { get; }

    /// <summary>By power, then the ids of eyepiece and Barlow, then factor.</summary>
    public ImmutableArray<KitView> Views { get; }

    public ImmutableArray<KitView> Usable { get; }

    public LadderFigures Figures { get; }

    /// <summary>What is left to see without one item.</summary>
    public Ladder Without(Item item) => new(Telescope, Views.RemoveAll(view => view.Needs(item)), enough, lnLeastStep);

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

                if (Overlap.Between(Usable[i].Showing, Usable[j].Showing, lnLeastStep))
                {
                    yield return new OverlappingPair(Usable[i], Usable[j]);
                }
            }
        }
    }

    /// <summary>Whether no view from the second on repeats the first: views lie by power, and one that is no zoom repeats only what is close.</summary>
    private bool IsBeyond(in Showing first, in Showing second) => !first.IsZoom && second.LnCutPower - first.LnCutPower > lnLeastStep + Tolerance.Value;

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

    /// <summary>The stretches of positions with a usable view near enough, in order; no two of them touch.</summary>
    /// <param name="enough">The mismatch that is good enough.</param>
    public IEnumerable<Reach> Served(double enough)
    {
        Reach? open = null;
        foreach (var reach in Usable.Select(view => view.Reach).OrderBy(reach => reach.From))
        {
            var near = new Reach(Math.Max(0, reach.From - enough), Math.Min(Telescope.Axis.Length, reach.To + enough));
            if (open is { } earlier && Tolerance.Above(near.From, earlier.To))
            {
                yield return earlier;
                open = near;
            }
            else
            {
                open = new Reach(open?.From ?? near.From, Math.Max(open?.To ?? 0, near.To));
            }
        }

        if (open is { } last)
        {
            yield return last;
        }
    }

    private Jump JumpAcross(double from, double to, JumpPlace place) =>
        new(Telescope.Axis.PowerAt(from), Telescope.Axis.PowerAt(to), to - from, place);
}
