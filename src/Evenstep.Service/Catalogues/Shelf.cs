using System.Text.Json;
using Evenstep.Service.Reading;

namespace Evenstep.Service.Catalogues;

/// <summary>The stored catalogues: the demo catalogue, and what a folder of files holds. They are read once, at start.</summary>
internal sealed class Shelf
{
    public const string DemoId = "demo";
    public const string FolderKey = "Evenstep:CatalogueFolder";

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

    /// <summary>Reads the demo catalogue that lies beside the assembly, and nothing else.</summary>
    public static Shelf WithDemo() => new([ReadDemo()]);

    /// <summary>The demo catalogue, and each file of the folder that is configured: `shop.json` is the catalogue `shop`.</summary>
    /// <exception cref="InvalidDataException">A catalogue is faulty; the message names every fault.</exception>
    public static Shelf From(IConfiguration configuration) => configuration[FolderKey] is { Length: > 0 } folder
        ? new([ReadDemo(), .. Directory.EnumerateFiles(folder, "*.json").Select(path => Read(Path.GetFileNameWithoutExtension(path), path))])
        : WithDemo();

    private static Catalogue ReadDemo() => Read(DemoId, Path.Combine(AppContext.BaseDirectory, "Catalogues", "demo.json"));

    private static Catalogue Read(string id, string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        var faults = new Faults();
        var request = CatalogueFields.Stored.Read(document.RootElement, Place.Root, faults);
        var catalogue = request is null ? null : CatalogueReader.ReadWhole(id, request, document.RootElement, Place.Root, faults);
        return catalogue is not null && !faults.Any
            ? catalogue
            : throw new InvalidDataException($"The catalogue {id} is faulty: {string.Join("; ", faults.Shown)}");
    }
}
