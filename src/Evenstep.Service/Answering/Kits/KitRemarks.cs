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
            (Cautions.SpectaclesOff, _) => phrase.With(RemarkValue.Of("off", OffIn(caution))),
            (Cautions.Eyesight, SpectaclesCautions.ComeOff) => phrase.With(RemarkValue.Of("from", FromIn(caution))),
            _ => phrase,
        };
    }

    /// <summary>Each eyepiece with the powers at which the spectacles come off.</summary>
    private static Sentence[] OffIn(Remark caution)
    {
        var (items, powers) = ((Item[])Phrase.ValueOf(caution, "names").Value!, (double[][])Phrase.ValueOf(caution, "powers").Value!);
        var powersAtShortest = (object?[][])Phrase.ValueOf(caution, "powersAtShortest").Value!;
        return
        [
            .. items.Select((item, index) => new Sentence(
                "caution/spectacles-off/one",
                [RemarkValue.Of("name", item), RemarkValue.Of("powers", ViewPhrase.PowersOf(powers[index], powersAtShortest[index]))])),
        ];
    }

    /// <summary>Each telescope with the power from which on they may.</summary>
    private static Sentence[] FromIn(Remark caution)
    {
        var telescopes = (string[])Phrase.ValueOf(caution, "telescopes").Value!;
        var powers = (object?[])Phrase.ValueOf(caution, "fromPowers").Value!;
        return
        [
            .. telescopes.Zip(powers, (telescope, power) => power is null
                ? new Sentence("caution/eyesight/come-off/everywhere", [RemarkValue.Of("telescope", telescope)])
                : new Sentence("caution/eyesight/come-off/from", [RemarkValue.Of("telescope", telescope), RemarkValue.Power("power", (double)power)])),
        ];
    }

    private static RemarkAnswer NoteOf(Remark note)
    {
        var phrase = Phrase.Of("note", note);
        return note.Code switch
        {
            KitNotes.AssumedFigures => phrase.With(RemarkValue.Of("assumed", AssumedIn(note))),
            KitNotes.FastTelescope => phrase.With(RemarkValue.Of("slow", SlowIn(note))),
            _ => phrase,
        };
    }

    /// <summary>Each item with the steepest light cone it is made for.</summary>
    private static Sentence[] SlowIn(Remark note)
    {
        var items = (Item[])Phrase.ValueOf(note, "names").Value!;
        var ratios = (double[])Phrase.ValueOf(note, "fastestFocalRatios").Value!;
        return
        [
            .. items.Zip(ratios, (item, ratio) =>
                new Sentence("note/fast-telescope/one", [RemarkValue.Of("name", item), new RemarkValue("fastestFocalRatio", ratio, 2)])),
        ];
    }

    /// <summary>Each item with the figure that was assumed of it.</summary>
    private static Sentence[] AssumedIn(Remark note)
    {
        var items = (Item[])Phrase.ValueOf(note, "names").Value!;
        var figures = Phrase.ValueOf(note, "figures");
        var key = note.Variant is null ? "note/assumed-figures/one" : "note/assumed-figures/eye-relief/one";
        return [.. items.Zip(
            (double[])figures.Value!,
            (item, figure) => new Sentence(key, [RemarkValue.Of("name", item), new RemarkValue("figure", figure, figures.Decimals)]))];
    }
}
