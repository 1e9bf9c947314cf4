using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Service.Recommendations;
using Evenstep.Service.Wording;

namespace Evenstep.Service.SpendingCurves;

/// <summary>What is worth saying of a spending curve.</summary>
internal static class SpendingRemarks
{
    public static IEnumerable<RemarkAnswer> NotesOf(RecommendationAsked asked, SpendingFrontier frontier, SpendingCurve curve, Kit suggested)
    {
        if (suggested.Figures.HasViews && Suggestion(curve, frontier) is { } variant)
        {
            yield return Phrase.Of("note", new Remark("suggested-point",
            [
                RemarkValue.Of("totalPrice", suggested.TotalPrice),
                RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency),
                RemarkValue.Ratio("largestStep", suggested.Figures.LargestStep),
            ]), variant);
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

    /// <summary>What can be said of the suggested point; null if nothing can, for it is the first and no knee.</summary>
    private static string? Suggestion(SpendingCurve curve, SpendingFrontier frontier) =>
        curve.SuggestedIndex == curve.Points.Length - 1 ? frontier.IsProved ? "last" : null
        : curve.SuggestedIndex > 0 ? "knee" : null;
}
