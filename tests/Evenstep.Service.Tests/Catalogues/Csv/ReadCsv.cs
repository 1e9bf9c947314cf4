using System.Text;
using System.Text.Json;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Csv;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Catalogues.Csv;

/// <summary>A CSV read the whole way, as a catalogue is.</summary>
internal sealed record ReadCsv(CatalogueRequest? Catalogue, IReadOnlyList<JsonElement> Rows, Faults Faults, WarningList Warnings)
{
    /// <summary>Place and code of each fault.</summary>
    public string[] Errors => [.. Faults.Shown.Select(fault => $"{fault.Pointer} {Words<FaultCode>.Of(fault.Code)}")];

    public string[] WarningCodes => [.. Warnings.Shown.Select(warning => $"{warning.Pointer} {warning.Code}")];

    public static JsonElement Demo { get; } =
        JsonElement.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Catalogues", "demo.json")));

    public static IReadOnlyList<JsonElement> DemoItems { get; } = [.. Demo.GetProperty("items").EnumerateArray()];

    public static ReadCsv Of(string csv, bool refuseUnknown = false) => Of(Encoding.UTF8.GetBytes(csv), refuseUnknown);

    public static ReadCsv Of(byte[] csv, bool refuseUnknown = false)
    {
        var items = CsvItems.Read(csv, CsvPurpose.Items, refuseUnknown, new Faults(), new WarningList());
        var json = items.InCatalogue("EUR", null);
        var request = CatalogueReader.ReadStored("shop", json, items.Root, items.Faults)?.Request;
        if (request is not null)
        {
            CatalogueChecks.Check(request, items.Root, items.Warnings);
        }

        return new ReadCsv(request, items.Rows, items.Faults, items.Warnings);
    }

    public static byte[] Export(IReadOnlyCollection<JsonElement> items)
    {
        using var bytes = new MemoryStream();
        CsvExport.Write(bytes, items);
        return bytes.ToArray();
    }

    public string MessageAt(string place) => Faults.Shown.First(fault => fault.Pointer == place).Message.In(Language.English);
}
