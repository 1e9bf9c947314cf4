using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.Choices;

/// <summary>What is worth saying of choices.</summary>
internal static class ChoicesRemarks
{
    /// <param name="asked">The request.</param>
    /// <param name="solved">What came of it.</param>
    /// <param name="budget">Sees cancellation.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static IEnumerable<RemarkAnswer> NotesOf(RecommendationAsked asked, SolvedChoices solved, WorkBudget budget)
    {
        var comfort = solved.Found.Comfort;
        foreach (var note in PlanRemarks.NotesOf(asked, new Solved(comfort, solved.Took), Kit.Of(asked.Problem, comfort.Purchases), budget))
        {
            yield return note;
        }

        if (comfort.IsProved && solved.Found.All.Any(choice => !choice.Plan.IsProved))
        {
            yield return Phrase.Of("note", new Remark("best-found", []));
        }

        foreach (var code in solved.Found.NotFound)
        {
            yield return OfChoice(code, new Remark("choice-not-found", []));
        }

        foreach (var (code, barlows) in solved.Found.Infeasible)
        {
            yield return OfChoice(code, barlows.IsEmpty
                ? new Remark("choice-infeasible", [])
                : new Remark("choice-infeasible", [.. RemarkValue.ItemsOf(barlows)]) { Variant = "must-include" });
        }
    }

    /// <summary>A remark on a way of weighing: by its code among the values, by its name in the sentence.</summary>
    private static RemarkAnswer OfChoice(ChoiceCode code, Remark remark)
    {
        var phrase = Phrase.Of("note", remark with { Values = [RemarkValue.Of("choice", Words<ChoiceCode>.Of(code)), .. remark.Values] });
        return phrase with { Text = phrase.Text with { Values = [RemarkValue.Of("choice", NameOf(code)), .. remark.Values] } };
    }

    /// <summary>Those of all kits, each said once.</summary>
    public static IReadOnlyList<RemarkAnswer> CautionsOf(SolvedChoices solved, Kit before) =>
    [
        .. solved.Found.All.Select(choice => choice.Kit).DefaultIfEmpty(before).SelectMany(KitRemarks.CautionsOf)
            .DistinctBy(caution => caution.Text.In(Language.English)),
    ];

    /// <summary>What a choice has more or less of, with the currency where money is spoken of.</summary>
    public static RemarkAnswer DifferenceOf(Remark difference, string currency) => Phrase.Of(
        "difference",
        difference.Values.Any(value => value.Value is decimal)
            ? difference with { Values = difference.Values.Add(RemarkValue.Of(Sentence.Currency, currency)) }
            : difference);

    /// <summary>What a way of weighing is called.</summary>
    public static Sentence NameOf(ChoiceCode code) => new($"picture/choice/{Words<ChoiceCode>.Of(code)}", []);
}
