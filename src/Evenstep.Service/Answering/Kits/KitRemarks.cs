using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Kits;

/// <summary>What is worth saying of any kit: warnings, and what sets its limits.</summary>
internal static class KitRemarks
{
    public static IReadOnlyList<RemarkAnswer> CautionsOf(Kit kit) => [.. Cautions.Of(kit).Select(caution => Phrase.Of("caution", caution))];

    /// <summary>Of the views that need a purchase.</summary>
    public static IReadOnlyList<RemarkAnswer> CautionsOfPurchases(Kit kit) =>
        [.. Cautions.OfPurchases(kit).Select(caution => Phrase.Of("caution", caution))];

    /// <summary>What speaks against the purchases.</summary>
    public static IEnumerable<RemarkAnswer> NotesOfPurchases(Kit kit) => KitNotes.OfPurchases(kit).Select(NoteOf);

    public static IEnumerable<RemarkAnswer> NotesOf(Kit kit) => KitNotes.Of(kit).Select(NoteOf);

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
        var figures = (double[])note.Values.First(value => value.Name == "figures").Value!;
        var key = note.Variant is null ? "note/assumed-figures/one" : "note/assumed-figures/eye-relief/one";
        return [.. items.Zip(figures, (item, figure) => new Sentence(key, [RemarkValue.Of("name", item), new RemarkValue("figure", figure, 2)]))];
    }
}
