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
    /// <param name="before">What is owned.</param>
    /// <param name="budget">Sees cancellation.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static IEnumerable<RemarkAnswer> NotesOf(RecommendationAsked asked, SolvedChoices solved, Kit before, WorkBudget budget)
    {
        var comfort = solved.Found.Comfort;
        foreach (var note in OfEveryChoice(solved, before, KitRemarks.NotesOf)
            .Concat(PlanRemarks.NotesOfPlan(asked, new Solved(comfort, solved.Took), Kit.Of(asked.Problem, comfort.Purchases), budget)))
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
    public static IReadOnlyList<RemarkAnswer> CautionsOf(SolvedChoices solved, Kit before) => [.. OfEveryChoice(solved, before, KitRemarks.CautionsOf)];

    /// <summary>What is worth saying of each kit; what is not true of all names the choices that it is true of.</summary>
    private static IEnumerable<RemarkAnswer> OfEveryChoice(SolvedChoices solved, Kit before, Func<Kit, IEnumerable<RemarkAnswer>> remarksOf)
    {
        var all = solved.Found.All;
        return all.IsEmpty ? remarksOf(before) : all
            .SelectMany(choice => remarksOf(choice.Kit).Select(remark => (Choice: choice, Remark: remark)))
            .GroupBy(one => one.Remark.Text.In(Language.English))
            .Select(said => said.Count() == all.Length ? said.First().Remark : In([.. said.SelectMany(one => one.Choice.Codes)], said.First().Remark));
    }

    private static RemarkAnswer In(ChoiceCode[] codes, RemarkAnswer remark) => remark with
    {
        Text = new Sentence("note/in-choices", [RemarkValue.Of("choices", codes.Select(NameOf).ToArray()), RemarkValue.Of("sentence", remark.Text)]),
        Values = Phrase.ValuesOf([.. remark.Values.Values, RemarkValue.Of("choices", codes.Select(Words<ChoiceCode>.Of).ToArray())]),
    };

    /// <summary>What a choice has more or less of, with the currency where money is spoken of.</summary>
    public static RemarkAnswer DifferenceOf(Remark difference, string currency) => Phrase.Of(
        "difference",
        difference.Values.Any(value => value.Value is decimal)
            ? difference with { Values = difference.Values.Add(RemarkValue.Of(Sentence.Currency, currency)) }
            : difference);

    /// <summary>What a way of weighing is called.</summary>
    public static Sentence NameOf(ChoiceCode code) => new($"picture/choice/{Words<ChoiceCode>.Of(code)}", []);
}
