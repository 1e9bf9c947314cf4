using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>What is worth saying of a plan.</summary>
internal static class PlanRemarks
{
    /// <param name="asked">The request.</param>
    /// <param name="solved">What came of it.</param>
    /// <param name="kit">With the purchases; what is owned, where nothing is allowed.</param>
    /// <param name="budget">Sees cancellation; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static IEnumerable<RemarkAnswer> NotesOf(RecommendationAsked asked, Solved solved, Kit kit, WorkBudget? budget = null) =>
    [
        .. KitRemarks.NotesOf(kit),
        .. PlanNotes.Of(kit, solved.Plan, budget).Select(note => NoteOf(note, asked)),
        .. OfTheWork(solved).Select(note => Phrase.Of("note", note)),
        .. solved.Plan.Conflicts is { } conflicts ? Remedies.Of(asked, conflicts).Select(remedy => Phrase.Of("note", remedy)) : [],
    ];

    private static RemarkAnswer NoteOf(Remark note, RecommendationAsked asked)
    {
        var forbidsAll = note.Code == PlanNotes.WideViewNotGranted && asked.Problem.Limits.MaxPurchases == 0;
        return Phrase.Of("note", WithCurrency(note, asked), forbidsAll ? "no-purchases" : null);
    }

    private static Remark WithCurrency(Remark remark, RecommendationAsked asked) => remark.Values.Any(value => value.Value is decimal)
        ? remark with { Values = remark.Values.Add(RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency)) }
        : remark;

    /// <summary>What was not proved, or not found.</summary>
    private static IEnumerable<Remark> OfTheWork(Solved solved)
    {
        if (!solved.Plan.IsProved)
        {
            yield return new Remark("best-found", []);
        }

        foreach (var missing in solved.Alternatives.Where(one => one.Plan is null))
        {
            yield return new Remark("alternative-not-found", [.. RemarkValue.ItemOf(missing.Without)]);
        }
    }
}
