using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text.Json;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Reading;

namespace Evenstep.Service.Catalogues;

/// <summary>Makes a catalogue of its JSON.</summary>
internal static class CatalogueReader
{
    private const int VersionBytes = 6;

    /// <summary>The catalogue of a request; null where it is missing, faulty or unknown.</summary>
    public static Catalogue? Read(CatalogueRequest? request, JsonElement json, Shelf shelf, Faults faults)
    {
        var place = Place.Root.At("catalogue");
        if (request?.Id is not { } id)
        {
            return request?.Items is null ? null : ReadWhole(null, request, Given.Find(json, "catalogue")!.Value, place, faults);
        }

        if (shelf.Find(id) is { } stored)
        {
            return stored;
        }

        faults.Add(place.At("id"), FaultCode.UnknownCatalogue, () => $"There is no catalogue {Given.Quoted(id)}. Stored are {Given.List(shelf.Ids)}; or give the items inline.");
        return null;
    }

    /// <summary>A whole catalogue. What of it is faulty is left out and reported.</summary>
    public static Catalogue ReadWhole(string? id, CatalogueRequest request, JsonElement json, Place place, Faults faults)
    {
        var items = new Dictionary<string, Item>(StringComparer.Ordinal);
        var listed = new Dictionary<string, ItemRequest>(StringComparer.Ordinal);
        foreach (var (i, item) in (request.Items ?? []).Index())
        {
            var at = place.At("items").At(i);
            var read = item is null ? null : ItemReader.Read(item, item.Id, at, faults);
            if (item?.Id is { } itemId && IsNew(itemId, item, listed, at, faults) && read is not null)
            {
                items.Add(itemId, read);
            }
        }

        return new Catalogue
        {
            Id = id,
            Version = id is null ? null : Convert.ToHexStringLower(SHA256.HashData(JsonMarshal.GetRawUtf8Value(json)).AsSpan(0, VersionBytes)),
            Currency = request.Currency ?? "",
            Items = items,
            Listed = listed,
            Telescopes = ReadTelescopes(request),
        };
    }

    /// <summary>Reports each id of a list that is no item's of the catalogue.</summary>
    public static void ReportUnknown(IReadOnlyList<string?> ids, Catalogue? catalogue, Place place, Faults faults)
    {
        foreach (var (i, id) in ids.Index())
        {
            if (id is not null && catalogue is not null && !catalogue.Listed.ContainsKey(id))
            {
                faults.Add(place.At(i), FaultCode.UnknownItem, () => UnknownItem(id, catalogue));
            }
        }
    }

    private static string UnknownItem(string id, Catalogue catalogue)
    {
        var suggestion = NearestName.To(id, catalogue.Listed.Keys) is { } nearest ? $" Did you mean `{nearest}`?" : "";
        return $"The catalogue has no item {Given.Quoted(id)}.{suggestion} Give the id of one it has.";
    }

    private static bool IsNew(string id, ItemRequest item, Dictionary<string, ItemRequest> listed, Place at, Faults faults)
    {
        if (listed.TryAdd(id, item))
        {
            return true;
        }

        faults.Add(at.At("id"), FaultCode.Duplicate, () => $"{Given.Quoted(id)} is the id of an item further up too; every item needs its own.");
        return false;
    }

    private static Dictionary<string, CatalogueTelescope> ReadTelescopes(CatalogueRequest request)
    {
        var telescopes = new Dictionary<string, CatalogueTelescope>(StringComparer.Ordinal);
        foreach (var one in request.Telescopes ?? [])
        {
            if (one is { Id: { } id, Telescope: { ApertureMm: { } aperture, FocalLengthMm: { } focalLength, FocuserBarrel: { } focuser } telescope })
            {
                var optics = new Telescope(telescope.Name ?? id, aperture, focalLength, focuser);
                telescopes.TryAdd(id, new CatalogueTelescope(id, optics, [.. (one.Included ?? []).OfType<string>()]));
            }
        }

        return telescopes;
    }
}
