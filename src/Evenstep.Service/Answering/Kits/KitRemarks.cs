using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Kits;

/// <summary>What is worth saying of any kit: warnings, and what sets its limits.</summary>
internal static class KitRemarks
{
    public static IReadOnlyList<RemarkAnswer> CautionsOf(Kit kit) => [.. Cautions.Of(kit).Select(CautionOf)];

    /// <summary>Of the views that need a purchase.</summary>
    public static IReadOnlyList<RemarkAnswer> CautionsOfPurchases(Kit kit) =>
        [.. Cautions.OfPurchases(kit).Select(CautionOf)];

    /// <summary>What speaks against the purchases.</summary>
    public static IEnumerable<RemarkAnswer> NotesOfPurchases(Kit kit) => KitNotes.OfPurchases(kit).Select(NoteOf);

    public static IEnumerable<RemarkAnswer> NotesOf(Kit kit) => KitNotes.Of(kit).Select(NoteOf);

    /// <summary>Only of what nobody stated.</summary>
    public static IEnumerable<RemarkAnswer> AssumedOf(Kit kit) => KitNotes.OfAssumedFigures(kit).Select(NoteOf);

    private static RemarkAnswer CautionOf(Remark caution)
    {
        var phrase = Phrase.Of("caution", caution);
        return (caution.Code, caution.Variant) switch
        {
            (Cautions.SpectaclesOff, _) => With(phrase, RemarkValue.Of("off", OffIn(caution))),
            (Cautions.Eyesight, SpectaclesCautions.ComeOff) => With(phrase, RemarkValue.Of("from", FromIn(caution))),
            _ => phrase,
        };
    }

    /// <summary>Each eyepiece with the powers at which the spectacles come off.</summary>
    private static Sentence[] OffIn(Remark caution)
    {
        var (items, powers) = ((Item[])ValueOf(caution, "names"), (double[][])ValueOf(caution, "powers"));
        var powersAtShortest = (object?[][])ValueOf(caution, "powersAtShortest");
        return
        [
            .. items.Select((item, index) => new Sentence(
                "caution/spectacles-off/one",
                [RemarkValue.Of("name", item), RemarkValue.Of("powers", ViewPhrase.PowersOf(powers[index], powersAtShortest[index]))])),
        ];
    }

    /// <summary>Each telescope with the power from which on they may.</summary>
    private static Sentence[] FromIn(Remark caution) =>
    [
        .. ((string[])ValueOf(caution, "telescopes")).Zip((object?[])ValueOf(caution, "fromPowers"), (telescope, power) => power is null
            ? new Sentence("caution/eyesight/come-off/everywhere", [RemarkValue.Of("telescope", telescope)])
            : new Sentence("caution/eyesight/come-off/from", [RemarkValue.Of("telescope", telescope), RemarkValue.Power("power", (double)power)])),
    ];

    private static object ValueOf(Remark remark, string name) => remark.Values.First(value => value.Name == name).Value!;

    private static RemarkAnswer NoteOf(Remark note)
    {
        var phrase = Phrase.Of("note", note);
        return note.Code switch
        {
            KitNotes.AssumedFigures => With(phrase, RemarkValue.Of("assumed", AssumedIn(note))),
            KitNotes.FastTelescope => With(phrase, RemarkValue.Of("slow", SlowIn(note))),
            _ => phrase,
        };
    }

    private static RemarkAnswer With(RemarkAnswer phrase, RemarkValue part) =>
        phrase with { Text = phrase.Text with { Values = [.. phrase.Text.Values, part] } };

    /// <summary>Each item with the steepest light cone it is made for.</summary>
    private static Sentence[] SlowIn(Remark note)
    {
        var items = (Item[])note.Values.First(value => value.Name == "names").Value!;
        var ratios = (double[])note.Values.First(value => value.Name == "fastestFocalRatios").Value!;
        return
        [
            .. items.Zip(ratios, (item, ratio) =>
                new Sentence("note/fast-telescope/one", [RemarkValue.Of("name", item), new RemarkValue("fastestFocalRatio", ratio, 2)])),
        ];
    }

    /// <summary>Each item with the figure that was assumed of it.</summary>
    private static Sentence[] AssumedIn(Remark note)
    {
        var items = (Item[])note.Values.First(value => value.Name == "names").Value!;
        var figures = note.Values.First(value => value.Name == "figures");
        var key = note.Variant is null ? "note/assumed-figures/one" : "note/assumed-figures/eye-relief/one";
        return [.. items.Zip(
            (double[])figures.Value!,
            (item, figure) => new Sentence(key, [RemarkValue.Of("name", item), new RemarkValue("figure", figure, figures.Decimals)]))];
    }
}
