using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// A zoom that could be bought, were zooms not avoided, and whose powers alone take in those of several purchased eyepieces, each
/// alone, in every telescope where these are usable. Of several that which stands in for most eyepieces, then the cheapest.
/// </summary>
/// <param name="Zoom">The zoom; ties go to the first id.</param>
/// <param name="Eyepieces">At least two.</param>
public sealed record ZoomInPlace(Item Zoom, ImmutableArray<Item> Eyepieces)
{
    private const int FewestEyepieces = 2;

    internal Remark Remark
    {
        get
        {
            var zoom = (Zoom)Zoom.Optic;
            return new Remark(PlanNotes.ZoomInstead,
            [
                RemarkValue.Of("itemId", Zoom.Id),
                RemarkValue.Of("name", Zoom.Name ?? Zoom.Id),
                RemarkValue.Of("price", Zoom.Price),
                .. RemarkValue.ItemsOf(Eyepieces),
                RemarkValue.Of("pricesTogether", Eyepieces.Sum(item => item.Price)),
                RemarkValue.Degrees("apparentFieldAtLongestDeg", zoom.ApparentFieldAtLongestDeg),
                RemarkValue.Degrees("apparentFieldAtShortestDeg", zoom.ApparentFieldAtShortestDeg),
                RemarkValue.Degrees("leastApparentFieldDeg", Eyepieces.Min(item => item.Ocular!.ApparentFieldAtLongestDeg)),
            ]);
        }
    }

    /// <summary>Null if there is none, or if zooms are not avoided, for then the plan has weighed them.</summary>
    public static ZoomInPlace? Of(Kit kit)
    {
        ImmutableArray<Item> eyepieces = [.. kit.Purchases.Where(item => item is { Optic: Eyepiece, IsReticle: false })];
        if (!kit.Problem.Preferences.AvoidZooms || eyepieces.Length < FewestEyepieces)
        {
            return null;
        }

        var enough = kit.Problem.Catalogue.Items.Where(item => item.IsZoom && !kit.Purchases.Contains(item))
            .Select(zoom => new ZoomInPlace(zoom, TakenInBy(zoom.Ocular!, eyepieces, kit)))
            .Where(one => one.Eyepieces.Length >= FewestEyepieces)
            .ToDictionary(one => one.Zoom);
        return CandidatesAmong([.. enough.Keys], kit.Problem).Select(zoom => enough[zoom])
            .OrderByDescending(one => one.Eyepieces.Length).ThenBy(one => one.Zoom.ExactPrice).ThenBy(one => one.Zoom.Id, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private static ImmutableArray<Item> CandidatesAmong(ImmutableArray<Item> zooms, PurchaseProblem problem) => zooms.IsEmpty
        ? []
        : Candidacy.Of(problem with { Preferences = problem.Preferences with { AvoidZooms = false } }, zooms).Candidates;

    private static ImmutableArray<Item> TakenInBy(Ocular zoom, ImmutableArray<Item> eyepieces, Kit kit) =>
        eyepieces.RemoveAll(eyepiece => !kit.Ladders.All(ladder => IsTakenIn(eyepiece, zoom, ladder, kit.Problem)));

    private static bool IsTakenIn(Item eyepiece, Ocular zoom, Ladder ladder, PurchaseProblem problem)
    {
        foreach (var view in ladder.Usable)
        {
            if (view.Barlow is null && view.Eyepiece.Equals(eyepiece))
            {
                return View.Of(ladder.Telescope, zoom) is { } stretch
                    && stretch.NotUsableBecause(problem.Observer, problem.Preferences.LeastApparentFieldDeg, bought: true) is null
                    && Tolerance.AtLeast(view.Reach.From, stretch.From) && Tolerance.AtMost(view.Reach.To, stretch.To);
            }
        }

        return true;
    }
}
