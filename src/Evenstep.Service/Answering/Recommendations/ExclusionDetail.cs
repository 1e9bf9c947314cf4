using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Says of an item that is no candidate what exactly is against it.</summary>
internal static class ExclusionDetail
{
    /// <summary>By a figure that nobody stated.</summary>
    private const string Assumed = "assumed";

    public static RemarkAnswer Of(RecommendationAsked asked, Exclusion exclusion)
    {
        var (variant, values) = exclusion.Reason == Excluded.OverBudget
            ? OverBudget(asked, exclusion.Item)
            : Account(asked.Problem, exclusion.Item, exclusion.Reason);
        return Phrase.Of("exclusion", new Remark(Words<Excluded>.Of(exclusion.Reason), [.. values]), variant);
    }

    private static (string? Variant, RemarkValue[] Values) Account(PurchaseProblem problem, Item item, Excluded reason) => reason switch
    {
        Excluded.ByRequest => ByRequest(problem, item),
        Excluded.Reticle => (problem.Demands.ReticleLeastPower is null ? null : "owned", []),
        Excluded.TooHeavy => (null, [new RemarkValue("massGrams", item.MassGrams ?? 0, 1), new RemarkValue("limit", problem.Limits.MaxItemMassGrams ?? 0, 1)]),
        Excluded.BarrelTooWide => (problem.Telescopes.Length == 1 ? null : "any", [RemarkValue.Of("barrel", Words<Barrel>.Of(item.Optic.Barrel))]),
        Excluded.OutsidePowerRange => OutsidePowerRange(problem, item),
        Excluded.EyeReliefTooShort => EyeReliefTooShort(problem, item),
        Excluded.ApparentFieldTooNarrow => (item.Optic is Eyepiece { IsApparentFieldAssumed: true } ? Assumed : null,
        [
            RemarkValue.Degrees("apparentFieldDeg", item.Ocular!.ApparentFieldAtLongestDeg),
            RemarkValue.Degrees("leastDeg", problem.Preferences.LeastApparentFieldDeg ?? 0),
        ]),
        Excluded.OverlapsOwned => (problem.Owned.Contains(item) ? "itself" : null, []),
        _ => (null, []),
    };

    private static (string?, RemarkValue[]) ByRequest(PurchaseProblem problem, Item item) =>
        (problem.Preferences.Exclude.Contains(item.Id) ? null : item.IsBarlow ? "barlow" : "zoom", []);

    private static (string?, RemarkValue[]) OverBudget(RecommendationAsked asked, Item item)
    {
        var limits = asked.Problem.Limits;
        var overall = item.Price > limits.Budget;
        return (overall ? null : "item",
        [
            RemarkValue.Of("price", item.Price),
            RemarkValue.Of("limit", overall ? limits.Budget : limits.MaxPricePerItem ?? 0),
            RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency),
        ]);
    }

    private static (string?, RemarkValue[]) OutsidePowerRange(PurchaseProblem problem, Item item)
    {
        if (item.IsReticle)
        {
            return ("reticle", [RemarkValue.Power("leastPower", problem.Demands.ReticleLeastPower ?? 0)]);
        }

        var view = ViewsAlone(problem, item).First();
        return (item.IsZoom ? "zoom" : null,
        [
            RemarkValue.Of("telescope", view.Telescope.Telescope.Name),
            RemarkValue.Power("power", view.Power),
            RemarkValue.Power("lowest", view.Telescope.Range.Lowest),
            RemarkValue.Power("highest", view.Telescope.Range.Highest),
            .. item.IsZoom ? [RemarkValue.Power("powerAtShortest", view.PowerAtShortest)] : Array.Empty<RemarkValue>(),
        ]);
    }

    private static (string?, RemarkValue[]) EyeReliefTooShort(PurchaseProblem problem, Item item) =>
    (item.Optic is Eyepiece { IsEyeReliefAssumed: true } ? Assumed : null,
    [
        RemarkValue.Millimetres("eyeReliefMm", item.Ocular!.EyeReliefMm),
        RemarkValue.Millimetres("neededMm", ViewsAlone(problem, item)
            .Where(view => view.PowerOutsideRange() is null)
            .Min(view => problem.Observer.NeededEyeReliefMm(view.ExitPupilMm, bought: true))),
    ]);

    private static IEnumerable<View> ViewsAlone(PurchaseProblem problem, Item item) =>
        problem.Telescopes.Select(telescope => View.Of(telescope, item.Ocular!)).OfType<View>();
}
