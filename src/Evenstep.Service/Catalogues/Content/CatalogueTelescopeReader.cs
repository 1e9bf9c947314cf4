using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>Understands the telescopes that a catalogue lists, and what is packed with them.</summary>
/// <param name="listed">The catalogue's items for sale.</param>
/// <param name="pointer">Where the telescopes stand.</param>
/// <param name="faults">Where faults are reported.</param>
internal sealed class CatalogueTelescopeReader(IReadOnlyDictionary<string, ItemRequest> listed, RequestPointer pointer, Faults faults)
{
    private readonly Dictionary<string, CatalogueTelescope> telescopes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Item Item, ItemRequest Request, RequestPointer At)> packed = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, CatalogueTelescope> Telescopes => telescopes;

    /// <summary>The items given in full with some telescope.</summary>
    public IReadOnlyDictionary<string, Item> Packed => packed.ToDictionary(pair => pair.Key, pair => pair.Value.Item, StringComparer.Ordinal);

    public void ReadAll(IReadOnlyList<TelescopeRequest?> requests)
    {
        foreach (var (i, request) in requests.Index())
        {
            if (request is not null)
            {
                ReadOne(request, pointer.At(i));
            }
        }
    }

    private void ReadOne(TelescopeRequest request, RequestPointer at)
    {
        var included = ReadIncluded(request.Included ?? [], at.To(nameof(TelescopeRequest.Included)));
        if (request is not { Id: { } id, ApertureMm: { } aperture, FocalLengthMm: { } focalLength, FocuserBarrel: { } focuser })
        {
            return;
        }

        if (!telescopes.TryAdd(id, new CatalogueTelescope(id, new Telescope(request.Name ?? id, aperture, focalLength, focuser), included)))
        {
            faults.Add(at.At("id"), FaultCode.Duplicate, () => ErrorMessage.Of("error/telescope-id-twice", ("id", ErrorText.Quoted(id))));
        }
    }

    private ImmutableArray<string> ReadIncluded(IReadOnlyList<ItemRequest?> requests, RequestPointer at)
    {
        var ids = new List<string>();
        foreach (var (i, request) in requests.Index())
        {
            if (request?.Id is { } id && (request.IsNamed ? IsListed(id, at.At(i)) : IsPacked(request, id, at.At(i))))
            {
                AddOnce(id, ids, at.At(i));
            }
        }

        return [.. ids];
    }

    private void AddOnce(string id, List<string> ids, RequestPointer at)
    {
        if (ids.Contains(id))
        {
            faults.Add(at, FaultCode.Duplicate, () => ErrorMessage.Of("error/packed-twice", ("id", ErrorText.Quoted(id))));
        }
        else
        {
            ids.Add(id);
        }
    }

    private bool IsListed(string id, RequestPointer at)
    {
        if (listed.ContainsKey(id))
        {
            return true;
        }

        faults.Add(at, FaultCode.UnknownItem, () => NoSuchItem.Of(id, listed.Keys, "error/no-such-item/give-one-or-full"));
        return false;
    }

    /// <summary>Takes in an item in full. Several telescopes may be packed with the same one, but not with different ones of one id.</summary>
    private bool IsPacked(ItemRequest request, string id, RequestPointer at)
    {
        if (ItemReader.Read(request, id, at, faults) is not { } item)
        {
            return false;
        }

        if (listed.ContainsKey(id))
        {
            faults.Add(at.At("id"), FaultCode.Duplicate, () => ErrorMessage.Of("error/packed-id-of-item", ("id", ErrorText.Quoted(id))));
            return false;
        }

        if (packed.TryAdd(id, (item, request, at)) || ItemLikeness.ButForTheId.Equals(packed[id].Request, request))
        {
            return true;
        }

        faults.Add(at.At("id"), FaultCode.Duplicate, () => ErrorMessage.Of("error/packed-id-twice", ("id", ErrorText.Quoted(id)), ("place", packed[id].At)));
        return false;
    }
}
