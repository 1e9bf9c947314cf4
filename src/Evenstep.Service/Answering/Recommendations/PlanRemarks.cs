using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>What is worth saying of a plan.</summary>
internal static class PlanRemarks
{
    private const string NotDecided = "holds-while-not-decided";

    /// <param name="asked">The request.</param>
    /// <param name="solved">What came of it.</param>
    /// <param name="kit">With the purchases; what is owned, where nothing is allowed.</param>
    /// <param name="budget">Sees cancellation; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static IEnumerable<RemarkAnswer> NotesOf(RecommendationAsked asked, Solved solved, Kit kit, WorkBudget? budget = null) =>
    [
        .. KitRemarks.NotesOf(kit),
        .. NotesOfPlan(asked, solved, kit, budget),
    ];

    /// <summary>The same without those of any kit.</summary>
    /// <param name="asked">The request.</param>
    /// <param name="solved">What came of it.</param>
    /// <param name="kit">With the purchases; what is owned, where nothing is allowed.</param>
    /// <param name="budget">Sees cancellation; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static IEnumerable<RemarkAnswer> NotesOfPlan(RecommendationAsked asked, Solved solved, Kit kit, WorkBudget? budget = null) =>
    [
        .. PlanNotes.Of(kit, solved.Plan, budget).Select(note => NoteOf(note, asked)),
        .. OfTheWork(solved).Select(note => Phrase.Of("note", note)),
        .. Undecided(solved.HoldsWhile),
        .. RemarksOnConflicts(asked, solved.Plan),
    ];

    /// <summary>What would make possible what is not; nothing where something is allowed.</summary>
    public static ImmutableArray<Sentence> RemediesOf(RecommendationAsked asked, Plan plan) => [.. RemarksOnConflicts(asked, plan).Select(note => note.Text)];

    private static IEnumerable<RemarkAnswer> RemarksOnConflicts(RecommendationAsked asked, Plan plan) =>
        plan.Conflicts is { } conflicts ? Remedies.Of(asked, conflicts).Select(remedy => Phrase.Of("note", remedy)) : [];

    /// <summary>The inputs for which the work ended before it was known how far the plan holds.</summary>
    private static IEnumerable<RemarkAnswer> Undecided(HoldsWhile? holds)
    {
        string[] inputs = holds is null ? [] :
        [
            .. holds.SeeingArcsec is null ? ["seeingArcsec"] : (string[])[],
            .. holds.PupilMm is null ? ["pupilMm"] : (string[])[],
            .. holds.Budget is null ? ["budget"] : (string[])[],
        ];
        if (inputs.Length > 0)
        {
            Sentence[] named = [.. inputs.Select(input => new Sentence($"note/{NotDecided}/{input}", []))];
            yield return Phrase.Of("note", new Remark(NotDecided, [RemarkValue.Of("inputs", inputs)])) with
            {
                Text = new Sentence($"note/{NotDecided}", [RemarkValue.Of("inputs", named)]),
            };
        }
    }

    private static RemarkAnswer NoteOf(Remark note, RecommendationAsked asked)
    {
        var forbidsAll = note.Code == PlanNotes.WideViewNotGranted && asked.Problem.Limits.MaxPurchases == 0;
        var phrase = Phrase.Of("note", WithCurrency(note, asked), forbidsAll ? "no-purchases" : SpeaksOfNoBudget(note, asked) ? "no-budget" : null);
        return asked.Problem.Telescopes.Length == 1 ? WithAssumed(phrase, note) : InTelescopes(WithAssumed(phrase, note), note);
    }

    /// <summary>An offer says which of its figures nobody stated.</summary>
    private static RemarkAnswer WithAssumed(RemarkAnswer phrase, Remark note) => note.Values
        .Where(value => value.Name is WiderView.AssumedField or WiderView.AssumedEyeRelief)
        .Aggregate(phrase, (said, value) => Around(
            said, value.Name == WiderView.AssumedField ? "note/wider-view-costs/assumed-field" : "note/wider-view-costs/assumed-eye-relief", value));

    /// <summary>And which telescopes it is for.</summary>
    private static RemarkAnswer InTelescopes(RemarkAnswer phrase, Remark note) => note.Code switch
    {
        PlanNotes.WiderViewCosts => Around(phrase, "note/wider-view-costs/in-telescope", Phrase.ValueOf(note, "telescope")),
        PlanNotes.ZoomInstead => Around(phrase, "note/zoom-instead/in-telescopes", Phrase.ValueOf(note, "telescopes")),
        _ => phrase,
    };

    private static RemarkAnswer Around(RemarkAnswer phrase, string key, RemarkValue value) =>
        phrase with { Text = new Sentence(key, [RemarkValue.Of("sentence", phrase.Text), value]) };

    /// <summary>What is left of the greatest budget there is means nothing: it stands for none.</summary>
    private static bool SpeaksOfNoBudget(Remark note, RecommendationAsked asked) =>
        note is { Variant: null, Code: PlanNotes.WiderViewCosts or PlanNotes.ZoomInstead } && asked.Problem.Limits.Budget == (decimal)Bounds.Budget.Most;

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
