using System.Text.Json;
using Evenstep.Service.Reading;

namespace Evenstep.Service.Catalogues;

/// <summary>The stored catalogues. Only the demo catalogue, so far.</summary>
internal sealed class Shelf
{
    public const string DemoId = "demo";

    private readonly Dictionary<string, Catalogue> catalogues;

    private Shelf(IEnumerable<Catalogue> catalogues)
    {
        this.catalogues = catalogues.ToDictionary(catalogue => catalogue.Id!, StringComparer.Ordinal);
        Version = string.Join(' ', this.catalogues.Values.OrderBy(one => one.Id, StringComparer.Ordinal).Select(one => $"{one.Id}@{one.Version}"));
    }

    /// <summary>The same as long as nothing on the shelf has changed. An answer made from this shelf is kept under it.</summary>
    public string Version { get; }

    public IReadOnlyCollection<string> Ids => catalogues.Keys;

    public Catalogue? Find(string id) => catalogues.GetValueOrDefault(id);

    /// <summary>Reads the demo catalogue that lies beside the assembly.</summary>
    public static Shelf WithDemo() => new([ReadDemo(Path.Combine(AppContext.BaseDirectory, "Catalogues", "demo.json"))]);

    private static Catalogue ReadDemo(string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        var faults = new Faults();
        var request = CatalogueFields.Stored.Read(document.RootElement, Place.Root, faults);
        var catalogue = request is null ? null : CatalogueReader.ReadWhole(DemoId, request, document.RootElement, Place.Root, faults);
        return catalogue is not null && !faults.Any
            ? catalogue
            : throw new InvalidDataException($"The demo catalogue is faulty: {string.Join("; ", faults.Shown)}");
    }
}
