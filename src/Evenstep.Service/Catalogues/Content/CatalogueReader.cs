using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>Makes a catalogue of its JSON.</summary>
internal static class CatalogueReader
{
    /// <summary>A catalogue to be stored; null with the faults filled.</summary>
    public static Catalogue? ReadStored(string id, JsonElement json, Faults faults) => ReadStored(id, json, RequestPointer.Root, faults)?.Catalogue;

    /// <summary>A catalogue to be stored, understood and as its JSON says it; null with the faults filled.</summary>
    /// <param name="id">Under which it is to be stored.</param>
    /// <param name="json">All of it.</param>
    /// <param name="root">Its top, for the places of faults.</param>
    /// <param name="faults">Where faults are reported.</param>
    public static (Catalogue Catalogue, CatalogueRequest Request)? ReadStored(string id, JsonElement json, RequestPointer root, Faults faults)
    {
        var request = CatalogueShapes.Stored.Read(json, root, faults);
        var catalogue = request is null ? null : ReadWhole(request, root, faults);
        return request is null || catalogue is null || faults.Any ? null : (Stored(catalogue, id), request);
    }

    /// <summary>A stored catalogue with other items of the same ids, each of which has been read without faults.</summary>
    public static Catalogue Revise(Catalogue catalogue, IReadOnlyList<ItemRequest?> items)
    {
        var faults = new Faults();
        var revised = ReadWhole(catalogue.Request with { Items = items }, RequestPointer.Root, faults);
        return faults.Any
            ? throw new InvalidOperationException($"Items that were right are not in their catalogue: {string.Join("; ", faults.Shown)}")
            : Stored(revised, catalogue.Id!);
    }

    /// <summary>A whole catalogue. What of it is faulty is left out and reported.</summary>
    public static Catalogue ReadWhole(CatalogueRequest request, RequestPointer pointer, Faults faults)
    {
        var items = new Dictionary<string, Item>(StringComparer.Ordinal);
        var listed = new Dictionary<string, ItemRequest>(StringComparer.Ordinal);
        foreach (var (i, item) in (request.Items ?? []).Index())
        {
            var at = pointer.To(nameof(CatalogueRequest.Items)).At(i);
            var read = item is null ? null : ItemReader.Read(item, item.Id, at, faults);
            if (item?.Id is { } itemId && IsNew(itemId, item, listed, at, faults) && read is not null)
            {
                items.Add(itemId, read);
            }
        }

        var telescopes = new CatalogueTelescopeReader(listed, pointer.To(nameof(CatalogueRequest.Telescopes)), faults);
        telescopes.ReadAll(request.Telescopes ?? []);
        return new Catalogue
        {
            Id = null,
            Version = null,
            Request = request,
            Currency = request.Currency ?? "",
            Items = items,
            Listed = listed,
            Telescopes = telescopes.Telescopes,
            Packed = telescopes.Packed,
        };
    }

    /// <summary>Reports each id of a list that is no item's of the catalogue.</summary>
    public static void ReportUnknown(IReadOnlyList<string?> ids, Catalogue? catalogue, RequestPointer pointer, Faults faults)
    {
        foreach (var (i, id) in ids.Index())
        {
            if (id is not null && catalogue is not null && !catalogue.Listed.ContainsKey(id))
            {
                faults.Add(pointer.At(i), FaultCode.UnknownItem, () => NoSuchItem.Of(id, catalogue.Listed.Keys, "error/no-such-item/give-one"));
            }
        }
    }

    private static Catalogue Stored(Catalogue catalogue, string id)
    {
        var content = CatalogueContent.Write(catalogue.Request);
        return catalogue with { Id = id, Version = CatalogueContent.VersionOf(content), Content = content };
    }

    private static bool IsNew(string id, ItemRequest item, Dictionary<string, ItemRequest> listed, RequestPointer at, Faults faults)
    {
        if (listed.TryAdd(id, item))
        {
            return true;
        }

        faults.Add(at.At("id"), FaultCode.Duplicate, () => ErrorMessage.Of("error/item-id-twice", ("id", ErrorText.Quoted(id))));
        return false;
    }
}
