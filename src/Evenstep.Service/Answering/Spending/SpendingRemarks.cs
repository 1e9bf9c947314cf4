using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Spending;

/// <summary>What is worth saying of a spending curve.</summary>
internal static class SpendingRemarks
{
    /// <param name="asked">The request.</param>
    /// <param name="frontier">What the curve was made of.</param>
    /// <param name="curve">The curve.</param>
    /// <param name="suggested">With the purchases of the suggested point.</param>
    public static IEnumerable<RemarkAnswer> NotesOf(RecommendationAsked asked, SpendingFrontier frontier, SpendingCurve curve, Kit suggested)
    {
        if (suggested.Figures.HasViews && VariantOf(curve, frontier, suggested) is { } variant)
        {
            yield return SuggestedPoint(asked, suggested, variant);
        }

        if (Unproved(frontier, asked.Catalogue.Currency) is { } unproved)
        {
            yield return unproved;
        }
    }

    /// <summary>That not all of a curve is proved; null if it is.</summary>
    public static RemarkAnswer? Unproved(SpendingFrontier frontier, string currency) => frontier switch
    {
        { IsProved: true } => null,
        { ProvedUpTo: { } price } => Phrase.Of("note", new Remark("curve-proved-up-to",
            [RemarkValue.Of("provedUpTo", price), RemarkValue.Of(Sentence.Currency, currency)])),
        _ => Phrase.Of("note", new Remark("curve-not-proved", [])),
    };

    private static RemarkAnswer SuggestedPoint(RecommendationAsked asked, Kit kit, string variant)
    {
        var phrase = Phrase.Of("note", new Remark("suggested-point",
        [
            RemarkValue.Of("totalPrice", kit.TotalPrice),
            RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency),
            RemarkValue.Ratio("largestStep", kit.Figures.LargestStep.Ratio),
        ]), variant);
        return phrase.With(RemarkValue.Of("powers", PowersOf(kit)));
    }

    /// <summary>The one power there is, or the largest step, as it counts and from where to where.</summary>
    private static Sentence PowersOf(Kit kit)
    {
        KitView[] views = [.. kit.Ladders.SelectMany(ladder => ladder.Usable)];
        if (views is [{ View.IsZoom: false } only])
        {
            var range = only.View.Telescope.Range;
            return new Sentence(
                "note/suggested-point/one-power",
                [RemarkValue.Power("power", only.View.Power), RemarkValue.Power("from", range.Lowest), RemarkValue.Power("to", range.Highest)]);
        }

        return kit.Ladders.Where(ladder => !ladder.Usable.IsEmpty).SelectMany(ladder => ladder.Jumps()).MaxBy(jump => jump.Weighed.Ln) is { } widest
            ? new Sentence(
                "note/suggested-point/steps",
                [
                    RemarkValue.Power("from", widest.FromPower),
                    RemarkValue.Power("to", widest.ToPower),
                ])
            : new Sentence("note/suggested-point/no-step", []);
    }

    /// <summary>What can be said of the suggested point; null if nothing can, for it is the first and no knee.</summary>
    private static string? VariantOf(SpendingCurve curve, SpendingFrontier frontier, Kit suggested) =>
        curve.SuggestedIndex == curve.Points.Length - 1 ? frontier.IsProved ? LastOf(frontier.Problem, suggested) : null
        : curve.SuggestedIndex > 0 ? "knee" : null;

    private static string LastOf(PurchaseProblem problem, Kit suggested) =>
        problem.Limits.Budget == 0 ? "no-money"
        : suggested.Purchases.IsEmpty ? "nothing"
        : "last";
}
