using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>Says what an item comes to, and why.</summary>
internal static class VerdictWriter
{
    private const string Section = "verdict";

    public static RemarkAnswer Write(ItemMatch match, Item item, RecommendationAsked asked) => match.Verdict switch
    {
        Verdict.FillsAStep => WithRepetition(match, Fills(match.Filling!, item, match.Before.Figures.HasViews)),
        Verdict.WidensTheView => WithRepetition(match, Widens(match.WiderField!, item)),
        Verdict.Repeats => Repeats(match),
        Verdict.NotUsable => NotUsable(match, item, asked),
        _ => Of(match.Verdict, item.IsReticle ? "reticle" : match.Views.IsEmpty ? "no-view" : null),
    };

    /// <summary>Whatever else it does: that a recommendation would not buy it, if it overlaps too much.</summary>
    private static RemarkAnswer WithRepetition(ItemMatch match, RemarkAnswer verdict) => match.RepeatsTooMuch && ClosestOf(match) is { } pair
        ? verdict with
        {
            Text = new Sentence($"{Section}/not-bought", [RemarkValue.Of("sentence", verdict.Text), .. ViewPhrase.WordsOf(pair)]),
            Values = Phrase.ValuesOf([.. verdict.Values.Values, RemarkValue.Of("overlap", ViewPhrase.ValuesOf(pair))]),
        }
        : verdict;

    private static OverlappingPair? ClosestOf(ItemMatch match) => match.Repetitions.MinBy(pair => pair.Ratio ?? 1);

    private static RemarkAnswer Of(Verdict verdict, string? variant, params RemarkValue[] values) =>
        Phrase.Of(Section, new Remark(Words<Verdict>.Of(verdict), [.. values]), variant);

    private static RemarkAnswer Fills(Filling filling, Item item, bool hadViews)
    {
        var variant = !hadViews ? Reasons.First : filling.Jump.Place switch
        {
            JumpPlace.LowEnd => "low-end",
            JumpPlace.HighEnd => "high-end",
            _ => null,
        };
        variant = filling.View.View.IsZoom ? OfZoom(variant) : filling.Variant is { } special ? $"{variant}/{special}" : variant;
        return Through(filling.View, item, Of(
            Verdict.FillsAStep,
            variant,
            [RemarkValue.Power("from", filling.Jump.FromPower), RemarkValue.Power("to", filling.Jump.ToPower), .. ViewPhrase.ValuesOf(filling.View)]));
    }

    /// <summary>Says also what else of the owner's is in the focuser then.</summary>
    private static RemarkAnswer Through(KitView view, Item item, RemarkAnswer verdict)
    {
        var with = item.IsBarlow ? view.Eyepiece : view.Barlow;
        var through = with is null ? new Sentence("reason/alone", []) : new Sentence("reason/with", [RemarkValue.Of("with", with)]);
        return verdict.With(RemarkValue.Of("through", through));
    }

    /// <summary>A zoom is told by both its ends: no one power is what it adds.</summary>
    private static string OfZoom(string? variant) => variant is null ? "zoom" : $"{variant}/zoom";

    private static RemarkAnswer Widens(WiderField wider, Item item) => Through(wider.View, item, Of(
        Verdict.WidensTheView,
        null,
        [
            RemarkValue.Degrees("trueFieldDeg", wider.View.View.TrueFieldDeg),
            RemarkValue.Degrees("widestDeg", wider.WidestDeg),
            .. ViewPhrase.ValuesOf(wider.View),
        ]));

    /// <summary>By the closest of the repetitions.</summary>
    private static RemarkAnswer Repeats(ItemMatch match)
    {
        if (ClosestOf(match) is not { } pair || match.Before.Problem.Owned.Contains(match.After.Purchases[0]))
        {
            return Of(Verdict.Repeats, "owned");
        }

        return Of(Verdict.Repeats, null) with
        {
            Text = new Sentence($"{Section}/repeats", [.. ViewPhrase.WordsOf(pair)]),
            Values = Phrase.ValuesOf(ViewPhrase.ValuesOf(pair)),
        };
    }

    private static RemarkAnswer NotUsable(ItemMatch match, Item item, RecommendationAsked asked)
    {
        if (item.IsBarlow && !match.Views.IsEmpty)
        {
            return Of(Verdict.NotUsable, "barlow");
        }

        var because = ExclusionDetail.Of(asked, new Exclusion(item, ReasonOf(match)));
        return Of(Verdict.NotUsable, null) with
        {
            Text = new Sentence($"{Section}/not-usable", [RemarkValue.Of("sentence", because.Text)]),
            Values = Phrase.ValuesOf([RemarkValue.Of("reason", because.Code), .. because.Values.Values]),
        };
    }

    /// <summary>In the words of the items that are no candidates.</summary>
    private static Excluded ReasonOf(ItemMatch match) => match.Views.FirstOrDefault(view => view.Barlow is null)?.NotUsableBecause switch
    {
        null => Excluded.BarrelTooWide,
        Planning.Optics.NotUsable.EyeRelief => Excluded.EyeReliefTooShort,
        Planning.Optics.NotUsable.ApparentField => Excluded.ApparentFieldTooNarrow,
        _ => Excluded.OutsidePowerRange,
    };
}
