using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>Says of a rule that a kit's purchases break what exactly is against them.</summary>
internal static class BreachWriter
{
    private const string Section = "breach";

    /// <summary>One remark for a breach; for overlaps one for each pair of views.</summary>
    public static IEnumerable<RemarkAnswer> Write(Breach breach, Kit kit, Catalogue catalogue) => breach switch
    {
        Breach.Budget budget =>
        [
            Of(
                "budget", RemarkValue.Of("totalPrice", budget.TotalPrice), RemarkValue.Of("budget", budget.Limit),
                RemarkValue.Of(Sentence.Currency, catalogue.Currency)),
        ],
        Breach.MaxPurchases most => [Of("max-purchases", RemarkValue.Of("purchases", most.Count), RemarkValue.Of("maxPurchases", most.Limit))],
        Breach.MaxBarlows most => [Of("max-barlows", RemarkValue.Of("barlows", most.Count), RemarkValue.Of("maxBarlows", most.Limit))],
        Breach.Reticles most => [Of("reticles", RemarkValue.Of("reticles", most.Count))],
        Breach.Overlaps overlaps => kit.OverlapPairsThroughPurchases().Select(pair => Overlap(pair, overlaps)),
        Breach.MustInclude include => [Of("must-include", RemarkValue.ItemOf(catalogue.Items[include.ItemId]))],
        Breach.MustFrame frame => [MustFrame(frame.Framing, kit)],
        Breach.Reticle reticle => [Reticle(reticle.LeastPower, kit.ReticlePower())],
        _ => throw new ArgumentOutOfRangeException(nameof(breach), breach, "An unknown breach."),
    };

    private static RemarkAnswer Of(string code, params RemarkValue[] values) => Phrase.Of(Section, new Remark(code, [.. values]));

    private static RemarkAnswer Overlap(OverlappingPair pair, Breach.Overlaps overlaps)
    {
        RemarkValue[] counted =
        [
            RemarkValue.Of("telescope", pair.First.View.Telescope.Telescope.Name),
            RemarkValue.Of("overlaps", overlaps.Count),
            RemarkValue.Of("allowedOverlaps", overlaps.Limit),
        ];
        var key = pair.First.Eyepiece.Equals(pair.Second.Eyepiece) && pair.First.Barlow is null && pair.Second.Barlow is null ? "overlap/owned" : "overlap";
        return new RemarkAnswer
        {
            Code = "overlap",
            Text = new Sentence($"{Section}/{key}", [.. counted, RemarkValue.Of("name", pair.First.Eyepiece), .. ViewPhrase.WordsOf(pair)]),
            Values = Phrase.ValuesOf([counted[0], .. ViewPhrase.ValuesOf(pair), .. counted[1..]]),
        };
    }

    private static RemarkAnswer MustFrame(FramingDemand framing, Kit kit)
    {
        var telescope = framing.TelescopeIndex is { } index ? kit.Problem.Telescopes[index].Telescope.Name : null;
        var field = kit.WidestFieldDeg(framing.TelescopeIndex);
        var widest = field is { } widestDeg ? RemarkValue.Degrees("trueFieldDeg", widestDeg) : RemarkValue.Of("trueFieldDeg", null);
        RemarkValue[] values =
            [RemarkValue.Of("name", framing.Name), RemarkValue.Degrees("widthDeg", framing.WidthDeg), RemarkValue.Of("telescope", telescope), widest];
        var sentence = new Sentence(
            framing.Name is null ? $"{Section}/must-frame" : $"{Section}/must-frame/named",
            [.. values, RemarkValue.Of("widest", new Sentence(field is null ? $"{Section}/no-view" : $"{Section}/widest", [widest]))]);
        return new RemarkAnswer
        {
            Code = "must-frame",
            Text = telescope is null || kit.Problem.Telescopes.Length == 1
                ? sentence
                : new Sentence($"{Section}/in-telescope", [RemarkValue.Of("telescope", telescope), RemarkValue.Of("sentence", sentence)]),
            Values = Phrase.ValuesOf(values),
        };
    }

    private static RemarkAnswer Reticle(double leastPower, double? power) => Phrase.Of(
        Section,
        new Remark(
            "reticle",
            [RemarkValue.Power("leastPower", leastPower), power is { } reached ? RemarkValue.Power("power", reached) : RemarkValue.Of("power", null)]),
        power is null ? null : "weak");
}
