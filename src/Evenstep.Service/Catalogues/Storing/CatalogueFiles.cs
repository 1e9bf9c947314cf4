using System.Collections.Immutable;
using System.Text.Json;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>The catalogues of files, which are everyone's: the demo catalogue, and what a folder holds. They are read once, at start.</summary>
internal static class CatalogueFiles
{
    public const string FolderKey = "Evenstep:CatalogueFolder";

    /// <summary>The demo catalogue that lies beside the assembly, and nothing else.</summary>
    public static ImmutableSortedDictionary<string, Catalogue> WithDemo() => ById([ReadDemo()]);

    /// <summary>The demo catalogue, and each file of the folder that is configured: `shop.json` is the catalogue `shop`.</summary>
    /// <exception cref="InvalidDataException">A catalogue is faulty; the message names every fault.</exception>
    public static ImmutableSortedDictionary<string, Catalogue> From(IConfiguration configuration) => configuration[FolderKey] is { Length: > 0 } folder
        ? ById([ReadDemo(), .. Directory.EnumerateFiles(folder, "*.json").Select(path => Read(Path.GetFileNameWithoutExtension(path), path))])
        : WithDemo();

    private static ImmutableSortedDictionary<string, Catalogue> ById(IEnumerable<Catalogue> catalogues) =>
        catalogues.ToImmutableSortedDictionary(catalogue => catalogue.Id!, catalogue => catalogue, StringComparer.Ordinal);

    private static Catalogue ReadDemo() => Read(CatalogueSnapshot.DemoId, Path.Combine(AppContext.BaseDirectory, "Catalogues", "demo.json"));

    private static Catalogue Read(string id, string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        var faults = new Faults();
        return CatalogueReader.ReadStored(id, document.RootElement, faults)
            ?? throw new InvalidDataException($"The catalogue {id} is faulty: {string.Join("; ", faults.Shown)}");
    }
}
