using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Says of an item that is no candidate what exactly is against it.</summary>
internal static class ExclusionDetail
{
    /// <summary>By a figure that nobody stated.</summary>
    private const string Assumed = "assumed";

    /// <summary>The first reason; beside it a barrel that fits nowhere, which comes first in words, and a mass that is too great.</summary>
    public static RemarkAnswer Of(RecommendationAsked asked, Exclusion exclusion)
    {
        var detail = Detail(asked, exclusion.Item, exclusion.Reason);
        if (exclusion.Reason == Excluded.OverBudget && exclusion.Item.MassGrams > asked.Problem.Limits.MaxItemMassGrams)
        {
            detail = detail with { Text = Beside(detail.Text, Detail(asked, exclusion.Item, Excluded.TooHeavy).Text) };
        }

        return exclusion.Reason is Excluded.OutOfStock or Excluded.OverBudget or Excluded.TooHeavy && !Fits(asked.Problem, exclusion.Item)
            ? detail with { Text = Beside(Detail(asked, exclusion.Item, Excluded.BarrelTooWide).Text, detail.Text) }
            : detail;
    }

    /// <summary>Whether nothing that the request asks for is in the way, but what the item, the telescope or the eye is.</summary>
    public static bool IsFixed(PurchaseProblem problem, Exclusion exclusion) =>
        exclusion.Reason is Excluded.OutOfStock or Excluded.EyeReliefTooShort || !Fits(problem, exclusion.Item) || problem.Owned.Contains(exclusion.Item);

    private static bool Fits(PurchaseProblem problem, Item item) =>
        problem.Telescopes.Any(telescope => item.Optic.Barrel.FitsInto(telescope.Telescope.FocuserBarrel));

    private static Sentence Beside(Sentence sentence, Sentence other) =>
        new("exclusion/beside", [RemarkValue.Of("sentence", sentence), RemarkValue.Of("other", other)]);

    private static RemarkAnswer Detail(RecommendationAsked asked, Item item, Excluded reason)
    {
        if (reason == Excluded.OverlapsOwned && ClosestOverlap(asked.Problem, item) is { } pair)
        {
            return new RemarkAnswer
            {
                Code = Words<Excluded>.Of(reason),
                Text = new Sentence("exclusion/overlaps-owned", [.. ViewPhrase.WordsOf(pair)]),
                Values = Phrase.ValuesOf(ViewPhrase.ValuesOf(pair)),
            };
        }

        var (variant, values) = reason == Excluded.OverBudget ? OverBudget(asked, item) : Account(asked, item, reason);
        return Phrase.Of("exclusion", new Remark(Words<Excluded>.Of(reason), [.. values]), variant);
    }

    /// <summary>With a view that is there already, if the item makes such an overlap; null for an item that is owned itself.</summary>
    private static OverlappingPair? ClosestOverlap(PurchaseProblem problem, Item item) => problem.Owned.Contains(item) ? null :
        Kit.Of(problem, [item]).Ladders.SelectMany(ladder => ladder.Overlaps())
            .Where(pair => pair.First.NeedsPurchase || pair.Second.NeedsPurchase)
            .OrderBy(pair => pair.First.NeedsPurchase && pair.Second.NeedsPurchase).ThenBy(pair => pair.Ratio ?? 1)
            .FirstOrDefault();

    private static (string? Variant, RemarkValue[] Values) Account(RecommendationAsked asked, Item item, Excluded reason) =>
        reason == Excluded.ByRequest ? ByRequest(asked, item) : Account(asked.Problem, item, reason);

    private static (string? Variant, RemarkValue[] Values) Account(PurchaseProblem problem, Item item, Excluded reason) => reason switch
    {
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
        Excluded.OverlapsOwned => ("itself", []),
        _ => (null, []),
    };

    private static (string?, RemarkValue[]) ByRequest(RecommendationAsked asked, Item item) =>
        (asked.Problem.Preferences.Exclude.Contains(item.Id) ? null : item.IsBarlow ? "barlow" : asked.NamesZooms ? "zoom" : "zoom/usual", []);

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
