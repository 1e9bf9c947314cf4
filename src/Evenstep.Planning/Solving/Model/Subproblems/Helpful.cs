using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>
/// Leaves out candidates that help to meet no demand. Where only it matters whether some set is allowed, and how much of a
/// limit it uses, that is harmless: without such an item an allowed set stays allowed and uses no more of any limit.
/// <para>
/// An eyepiece's view through a Barlow helps to frame something only if the eyepiece has no usable view alone in that
/// telescope: else that one is there too, and wider. (A zoom's may be wider: where its lowest powers are below the range, a
/// Barlow brings others there, of another apparent field.)
/// </para>
/// </summary>
internal sealed class Helpful
{
    private readonly PurchaseProblem problem;
    private readonly ImmutableArray<Item> candidates;
    private readonly HashSet<Item> helpful;

    private Helpful(PurchaseProblem problem, ImmutableArray<Item> candidates)
    {
        this.problem = problem;
        this.candidates = candidates;
        helpful = [.. candidates.Where(item => item.IsReticle || problem.Demands.MustInclude.Contains(item.Id))];
    }

    /// <summary>The candidates that help, in their order.</summary>
    public static ImmutableArray<Item> Among(PurchaseProblem problem, ImmutableArray<Item> candidates)
    {
        var one = new Helpful(problem, candidates);
        one.AddWhatFrames();
        one.AddWhatServesReticles();
        return [.. candidates.Where(one.helpful.Contains)];
    }

    private void AddWhatFrames()
    {
        for (var t = 0; t < problem.Telescopes.Length; t++)
        {
            double[] widths =
            [
                .. problem.Demands.MustFrame.Where(demand => demand.TelescopeIndex is null || demand.TelescopeIndex == t).Select(demand => demand.WidthDeg),
            ];
            if (widths.Length > 0)
            {
                AddWhatFrames(problem.Telescopes[t], widths.Min());
            }
        }
    }

    private void AddWhatFrames(TelescopeInUse telescope, double widthDeg)
    {
        var barlows = problem.Owned.Concat(candidates).Where(item => item.IsBarlow).ToArray();
        foreach (var ocular in problem.Owned.Concat(candidates).Where(item => item.Ocular is not null))
        {
            var bought = !problem.Owned.Contains(ocular);
            if (KitViews.Alone(problem, telescope, ocular, bought).FirstOrDefault(view => view.IsUsable) is { } alone)
            {
                Add(alone, widthDeg);
                if (!ocular.IsZoom)
                {
                    continue;
                }
            }

            foreach (var view in barlows.SelectMany(barlow => KitViews.Through(problem, telescope, ocular, bought, barlow, true)))
            {
                Add(view, widthDeg);
            }
        }
    }

    private void Add(KitView view, double widthDeg)
    {
        if (view.IsUsable && FramingRule.IsWide(view.View.TrueFieldDeg, widthDeg))
        {
            helpful.Add(view.Eyepiece);
            helpful.UnionWith(view.Barlow is { } barlow ? [barlow] : Array.Empty<Item>());
        }
    }

    /// <summary>A Barlow serves where a reticle eyepiece would not reach the power without it.</summary>
    private void AddWhatServesReticles()
    {
        if (problem.Demands.ReticleLeastPower is { } asked)
        {
            Item[] reticles = [.. problem.Owned.Concat(candidates).Where(item => item.IsReticle)];
            helpful.UnionWith(candidates.Where(item => item.IsBarlow && Array.Exists(reticles, reticle =>
                ReticleRule.Serves(problem, reticle, [item], asked))));
        }
    }
}
