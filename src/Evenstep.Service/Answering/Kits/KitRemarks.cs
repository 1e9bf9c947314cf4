using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Kits;

/// <summary>What is worth saying of any kit: warnings, and what sets its limits.</summary>
internal static class KitRemarks
{
    public static IReadOnlyList<RemarkAnswer> CautionsOf(Kit kit) => [.. Cautions.Of(kit).Select(caution => Phrase.Of("caution", caution))];

    public static IEnumerable<RemarkAnswer> NotesOf(Kit kit) => KitNotes.Of(kit).Select(note => Phrase.Of("note", note));
}
