using Evenstep.Planning.Advice;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Catalogues.Warnings;

/// <summary>Gathers warnings; keeps the first five hundred and counts the rest.</summary>
internal sealed class WarningList
{
    public const int MostShown = 500;

    private readonly List<WarningAnswer> shown = [];

    public IReadOnlyList<WarningAnswer> Shown => shown;

    /// <summary>How many more there are than are shown.</summary>
    public int More { get; private set; }

    /// <summary>The same warnings so far, to go on from.</summary>
    public WarningList Copy()
    {
        var copy = new WarningList { More = More };
        copy.shown.AddRange(shown);
        return copy;
    }

    public void Add(RequestPointer pointer, Remark remark, string? variant = null)
    {
        if (shown.Count == MostShown)
        {
            More++;
            return;
        }

        var said = Phrase.Of("warning", remark, variant);
        shown.Add(new WarningAnswer { Pointer = pointer.ToString(), Code = said.Code, Text = said.Text, Values = said.Values });
    }
}
