using System.Text.Json.Nodes;
using Evenstep.Benchmarks.Problems;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Http;

/// <summary>Invented catalogues as files, for the service to read at start.</summary>
internal sealed class StoredShops : IDisposable
{
    private const int Seed = 1;

    public static readonly int[] Sizes = [300, 3000];

    public StoredShops()
    {
        foreach (var size in Sizes)
        {
            var items = ItemsOf(size).Select(item => (JsonNode)Wire(item)).ToArray();
            var catalogue = new JsonObject { ["currency"] = "EUR", ["items"] = new JsonArray(items) };
            File.WriteAllText(System.IO.Path.Combine(Folder, $"{NameOf(size)}.json"), catalogue.ToJsonString());
        }
    }

    public string Folder { get; } = Directory.CreateTempSubdirectory("evenstep-shops").FullName;

    public static IReadOnlyList<Item> ItemsOf(int size) => Shop.Catalogue(size, new Dice(size, Seed));

    public static string NameOf(int size) => $"shop-{size}";

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static JsonObject Wire(Item item)
    {
        var wire = item.Optic switch
        {
            Barlow barlow => new JsonObject { ["kind"] = "barlow", ["factors"] = new JsonArray([.. barlow.Factors.Select(factor => (JsonNode)factor)]) },
            Zoom zoom => new JsonObject
            {
                ["kind"] = "zoom",
                ["shortestFocalLengthMm"] = zoom.ShortestFocalLengthMm,
                ["longestFocalLengthMm"] = zoom.LongestFocalLengthMm,
                ["apparentFieldAtShortestDeg"] = zoom.ApparentFieldAtShortestDeg,
                ["apparentFieldAtLongestDeg"] = zoom.ApparentFieldAtLongestDeg,
                ["eyeReliefMm"] = zoom.EyeReliefMm,
            },
            Eyepiece eyepiece => new JsonObject
            {
                ["kind"] = "eyepiece",
                ["focalLengthMm"] = eyepiece.FocalLengthMm,
                ["apparentFieldDeg"] = eyepiece.ApparentFieldDeg,
                ["eyeReliefMm"] = eyepiece.EyeReliefMm,
                ["fieldStopMm"] = eyepiece.FieldStopMm,
                ["purpose"] = eyepiece.Purpose == EyepiecePurpose.Reticle ? "reticle" : "observing",
            },
            _ => throw new NotSupportedException(item.Id),
        };
        wire["id"] = item.Id;
        wire["barrel"] = item.Optic.Barrel switch { Barrel.Inch0965 => "0.965in", Barrel.Inch125 => "1.25in", _ => "2in" };
        wire["price"] = item.Price;
        wire["massGrams"] = item.MassGrams;
        wire["parfocalGroup"] = item.ParfocalGroup;
        wire["inStock"] = item.InStock;
        return wire;
    }
}
