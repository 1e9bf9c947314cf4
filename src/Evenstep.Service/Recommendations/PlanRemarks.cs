using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Kits;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Recommendations;

/// <summary>What is worth saying of a plan.</summary>
internal static class PlanRemarks
{
    public static RemarkAnswer ReasonOf(Remark reason, PurchaseProblem problem)
    {
        var isNamed = reason.Code == Reasons.Frames && reason.Values.Any(value => value is { Name: "name", Value: not "" });
        var phrase = Phrase.Of("reason", reason, isNamed ? "named" : null);
        var telescope = reason.Values.FirstOrDefault(value => value.Name == "telescope");
        return telescope is null || problem.Telescopes.Length == 1
            ? phrase
            : phrase with { Text = new Sentence("reason/in-telescope", [telescope, RemarkValue.Of("sentence", phrase.Text)]) };
    }

    public static IEnumerable<RemarkAnswer> NotesOf(RecommendationAsked asked, Solved solved)
    {
        var plan = solved.Plan;
        foreach (var note in KitRemarks.RangesSetByBarrel(asked.Problem))
        {
            yield return note;
        }

        if (plan.Wish is { Granted: false } wish)
        {
            yield return Phrase.Of("note", new Remark("wide-view-not-granted", [RemarkValue.Degrees("trueFieldDeg", wish.TrueFieldDeg)]));
        }

        if (!plan.IsProved)
        {
            yield return Phrase.Of("note", new Remark("best-found", []));
        }

        foreach (var missing in solved.Alternatives.Where(one => one.Plan is null))
        {
            yield return Phrase.Of("note", new Remark("alternative-not-found",
            [
                RemarkValue.Of("itemId", missing.Without.Id),
                RemarkValue.Of("name", missing.Without.Name ?? missing.Without.Id),
            ]));
        }

        foreach (var remedy in plan.Conflicts is null ? [] : RemediesOf(asked, plan.Conflicts.Nearest))
        {
            yield return Phrase.Of("note", remedy);
        }
    }

    /// <summary>What a person could change, one thing at a time, to make a set of purchases possible.</summary>
    private static IEnumerable<Remark> RemediesOf(RecommendationAsked asked, NearestLimits nearest)
    {
        Remark?[] remedies =
        [
            Remedy("larger-budget-helps", "budget", nearest.Budget, RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency)),
            Remedy("other-max-purchases-helps", "maxPurchases", nearest.MaxPurchases),
            Remedy("other-max-barlows-helps", "maxBarlows", nearest.MaxBarlows),
            Remedy("more-overlaps-help", "allowedOverlaps", nearest.AllowedOverlaps),
            .. nearest.WidthDeg.Select((width, i) => width is { } possible ? NarrowerFrame(asked.Problem.Demands.MustFrame[i], possible) : null),
        ];
        return remedies.OfType<Remark>().DefaultIfEmpty(new Remark("no-single-change-helps", []));
    }

    private static Remark? Remedy(string code, string name, object? value, params ReadOnlySpan<RemarkValue> more) =>
        value is null ? null : new Remark(code, [RemarkValue.Of(name, value), .. more]);

    private static Remark NarrowerFrame(FramingDemand framing, double possible) => new("narrower-frame-helps",
    [
        RemarkValue.Of("name", framing.Name ?? ""),
        RemarkValue.Degrees("askedDeg", framing.WidthDeg),
        RemarkValue.Degrees("widthDeg", possible),
    ]);
}
