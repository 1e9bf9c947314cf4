using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Kits;

/// <summary>What is worth saying of any kit: warnings, and what sets its limits.</summary>
internal static class KitRemarks
{
    public static IReadOnlyList<RemarkAnswer> CautionsOf(Kit kit) => [.. Cautions.Of(kit).Select(caution => Phrase.Of("caution", caution))];

    public static IEnumerable<RemarkAnswer> NotesOf(Kit kit) => KitNotes.Of(kit).Select(NoteOf);

    /// <summary>Only of what nobody stated.</summary>
    public static IEnumerable<RemarkAnswer> AssumedOf(Kit kit) => KitNotes.OfAssumedFigures(kit).Select(NoteOf);

    private static RemarkAnswer NoteOf(Remark note)
    {
        var phrase = Phrase.Of("note", note);
        return note.Code == KitNotes.AssumedFigures
            ? phrase with { Text = phrase.Text with { Values = [.. phrase.Text.Values, RemarkValue.Of("assumed", AssumedIn(note))] } }
            : phrase;
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
