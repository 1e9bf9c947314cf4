using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>The top of a catalogue that came as a CSV: its items are rows, named by their lines, and its currency is a query parameter.</summary>
internal sealed class CsvRoot(IReadOnlyList<int> lines) : RequestPointer(null, "")
{
    public override RequestPointer At(string name) =>
        name == FieldName.Of(nameof(CatalogueRequest.Items)) ? new Rows(lines)
        : name == FieldName.Of(nameof(CatalogueRequest.Currency)) ? OfQuery(name)
        : base.At(name);

    private sealed class Rows(IReadOnlyList<int> lines) : RequestPointer(null, "")
    {
        public override RequestPointer At(int index) => CsvTable.PointerOf(lines[index]);
    }
}
