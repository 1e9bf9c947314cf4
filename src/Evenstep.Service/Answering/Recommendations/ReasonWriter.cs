using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Says why an item is in a plan.</summary>
internal static class ReasonWriter
{
    public static RemarkAnswer Write(Remark reason, PurchaseProblem problem)
    {
        var isNamed = reason.Code == Reasons.Framing && Phrase.ValueOf(reason, "name").Value is not "";
        var phrase = Phrase.Of("reason", reason, isNamed ? "named" : null).With(PartsOf(reason));
        var telescope = reason.Values.FirstOrDefault(value => value.Name == "telescope");
        return telescope is null || problem.Telescopes.Length == 1
            ? phrase
            : phrase with { Text = new Sentence("reason/in-telescope", [telescope, RemarkValue.Of("sentence", phrase.Text)]) };
    }

    /// <summary>What the sentence has beside the values.</summary>
    private static RemarkValue[] PartsOf(Remark reason) => reason.Code switch
    {
        Reasons.FillsStep or Reasons.ReachesLowEnd or Reasons.ReachesHighEnd => [RemarkValue.Of("through", Through(Phrase.ValueOf(reason, "with").Value))],
        Reasons.BarlowAdds => [RemarkValue.Of("added", Added(reason))],
        _ => [],
    };

    private static Sentence Through(object? with) => with is null
        ? new Sentence("reason/alone", [])
        : new Sentence("reason/with", [RemarkValue.Of("with", with)]);

    /// <summary>Eyepiece by eyepiece.</summary>
    private static Sentence[] Added(Remark reason) =>
    [
        .. ((Item[])Phrase.ValueOf(reason, "names").Value!)
            .Zip(ViewPhrase.PowersOf((double[])Phrase.ValueOf(reason, "powers").Value!, (object?[])Phrase.ValueOf(reason, "powersAtShortest").Value!))
            .GroupBy(one => one.First, one => one.Second)
            .Select(one => new Sentence("reason/barlow-adds/one", [RemarkValue.Of("powers", one.ToArray()), RemarkValue.Of("name", one.Key)])),
    ];
}
