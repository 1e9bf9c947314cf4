using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// A zoom that could be bought, were zooms not avoided, and whose powers take in those of several purchases in every telescope: of
/// an eyepiece its own, of a Barlow all that it makes. It has no drawback that the purchases have not. Of several zooms that which
/// stands in for most purchases, then the cheapest.
/// </summary>
/// <param name="Zoom">The zoom; ties go to the first id.</param>
/// <param name="Items">Eyepieces and Barlows, at least two.</param>
/// <param name="LeastApparentFieldDeg">The narrowest apparent field, in degrees, of the views that they make.</param>
/// <param name="Telescopes">The names of the telescopes in which they make views.</param>
/// <param name="MoneyLeft">What the budget leaves without them; null where none was named.</param>
public sealed record ZoomInPlace(Item Zoom, ImmutableArray<Item> Items, double LeastApparentFieldDeg, ImmutableArray<string> Telescopes, decimal? MoneyLeft)
{
    private const int FewestItems = 2;

    internal Remark Remark
    {
        get
        {
            var zoom = (Zoom)Zoom.Optic;
            return new Remark(PlanNotes.ZoomInstead,
            [
                .. RemarkValue.ItemOf(Zoom),
                RemarkValue.Of("price", Zoom.Price),
                RemarkValue.Of("moneyLeft", MoneyLeft),
                .. RemarkValue.ItemsOf(Items),
                RemarkValue.Of("pricesTogether", Items.Sum(item => item.Price)),
                RemarkValue.Degrees("apparentFieldAtLongestDeg", zoom.ApparentFieldAtLongestDeg),
                RemarkValue.Degrees("apparentFieldAtShortestDeg", zoom.ApparentFieldAtShortestDeg),
                RemarkValue.Degrees("leastApparentFieldDeg", LeastApparentFieldDeg),
                RemarkValue.Of("telescopes", Telescopes.ToArray()),
            ])
            {
                Variant = PlanNotes.VariantFor(Zoom, MoneyLeft),
            };
        }
    }

    /// <summary>Null if there is none, or if zooms are not avoided, for then the plan has weighed them.</summary>
    public static ZoomInPlace? Of(Kit kit)
    {
        ImmutableArray<Item> replaceable = [.. kit.Purchases.Where(item => item.IsBarlow || item is { Optic: Eyepiece, IsReticle: false })];
        if (!kit.Problem.Preferences.AvoidZooms || replaceable.Length < FewestItems)
        {
            return null;
        }

        var enough = kit.Problem.Catalogue.Items.Where(item => item.IsZoom && !kit.Purchases.Contains(item))
            .Select(zoom => (Zoom: zoom, Items: TakenInBy(zoom.Ocular!, replaceable, kit)))
            .Where(one => one.Items.Length >= FewestItems && OfferedDrawbacks.AreThoseOf(kit, one.Zoom))
            .ToDictionary(one => one.Zoom, one => one.Items);
        return CandidatesAmong([.. enough.Keys], kit.Problem)
            .OrderByDescending(zoom => enough[zoom].Length).ThenBy(zoom => zoom.ExactPrice).ThenBy(zoom => zoom.Id, StringComparer.Ordinal)
            .Select(zoom => InPlaceOf(enough[zoom], zoom, kit))
            .FirstOrDefault();
    }

    private static ZoomInPlace InPlaceOf(ImmutableArray<Item> items, Item zoom, Kit kit) => new(
        zoom,
        items,
        kit.Ladders.SelectMany(ladder => ladder.Usable).Where(view => items.Any(view.Needs)).Min(view => view.View.Ocular.ApparentFieldAtLongestDeg),
        [.. kit.Ladders.Where(ladder => items.Any(item => ViewsOf(item, ladder).Any())).Select(ladder => ladder.Telescope.Telescope.Name)],
        PlanNotes.MoneyLeft(kit.Problem, kit.TotalPrice - items.Sum(item => item.Price)));

    private static ImmutableArray<Item> CandidatesAmong(ImmutableArray<Item> zooms, PurchaseProblem problem) => zooms.IsEmpty
        ? []
        : Candidacy.Of(problem with { Preferences = problem.Preferences with { AvoidZooms = false } }, zooms).Candidates;

    private static ImmutableArray<Item> TakenInBy(Ocular zoom, ImmutableArray<Item> items, Kit kit) =>
        items.RemoveAll(item => !kit.Ladders.Any(ladder => ViewsOf(item, ladder).Any())
            || !kit.Ladders.All(ladder => AreTakenIn([.. ViewsOf(item, ladder)], zoom, ladder, kit.Problem)));

    /// <summary>Of an eyepiece the view alone, of a Barlow all views.</summary>
    private static IEnumerable<KitView> ViewsOf(Item item, Ladder ladder) =>
        ladder.Usable.Where(view => item.IsBarlow ? item.Equals(view.Barlow) : view.Barlow is null && view.Eyepiece.Equals(item));

    private static bool AreTakenIn(IReadOnlyCollection<KitView> views, Ocular zoom, Ladder ladder, PurchaseProblem problem) => views.Count == 0
        || (View.Of(ladder.Telescope, zoom) is { } stretch
            && stretch.NotUsableBecause(problem.Observer, problem.Preferences.LeastApparentFieldDeg, bought: true) is null
            && views.All(view => Tolerance.AtLeast(view.Reach.From, stretch.From) && Tolerance.AtMost(view.Reach.To, stretch.To)));
}
