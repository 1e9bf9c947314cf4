using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Kits;

/// <summary>Understands what the observer owns: the items listed, and those packed with telescopes of the catalogue.</summary>
internal static class OwnedReader
{
    public static ImmutableArray<Item> Read(KitRequest request, Catalogue? catalogue, Faults faults)
    {
        var owned = new Dictionary<string, Item>(StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        // A query's ids that the catalogue does not know are taken out before, but not of a list that is refused for its length.
        var isWhole = !faults.AreOfQuery || request.Owned is not { Count: > PurchaseProblem.MostOwned };
        foreach (var (i, item) in (request.Owned ?? []).Index())
        {
            var pointer = RequestPointer.Root.To(nameof(KitRequest.Owned)).At(i);
            var id = item?.Id ?? MadeUpName.OfOwned(i + 1);
            var read = item is null ? null : ReadOne(item, id, catalogue, pointer, isWhole, faults);
            if (item is not null && IsNew(id, item, seen, catalogue, pointer, faults) && read is not null)
            {
                owned.Add(id, read);
            }
        }

        foreach (var packed in Packed(request, catalogue))
        {
            owned.TryAdd(packed.Id, packed);
        }

        return [.. owned.Values];
    }

    private static bool IsNew(string id, ItemRequest item, HashSet<string> seen, Catalogue? catalogue, RequestPointer pointer, Faults faults)
    {
        if (!seen.Add(id))
        {
            faults.Add(pointer.At("id"), FaultCode.Duplicate, () => ErrorMessage.Of("error/owned-id-twice", ("id", ErrorText.Quoted(id))));
            return false;
        }

        if (item.IsNamed || catalogue?.Knows(id) is not true)
        {
            return true;
        }

        faults.Add(pointer.At("id"), FaultCode.Duplicate, () => ErrorMessage.Of("error/owned-id-of-catalogue", ("id", ErrorText.Quoted(id))));
        return false;
    }

    private static Item? ReadOne(ItemRequest item, string id, Catalogue? catalogue, RequestPointer pointer, bool isWhole, Faults faults)
    {
        if (!item.IsNamed)
        {
            return ItemReader.Read(item, id, pointer, faults, isOwn: true);
        }

        var found = item.Id is null ? null : catalogue?.Find(id);
        if (found is null && isWhole && item.Id is not null && !faults.Touch(RequestPointer.Root.To(nameof(KitRequest.Catalogue))))
        {
            faults.Add(pointer.At("id"), FaultCode.UnknownItem, () => UnknownItem(id, catalogue, faults.AreOfQuery));
        }

        return found;
    }

    private static ErrorMessage UnknownItem(string id, Catalogue? catalogue, bool inQuery) => catalogue is null
        ? ErrorMessage.Of("error/no-catalogue", ("id", ErrorText.Quoted(id)))
        : NoSuchItem.Of(id, catalogue.Listed.Keys, inQuery ? "error/no-such-item/in-query" : "error/no-such-item/owned");

    private static IEnumerable<Item> Packed(KitRequest request, Catalogue? catalogue) =>
        catalogue is null ? [] : (request.Telescopes ?? [])
            .Where(telescope => telescope is { Id: not null, WithIncluded: not false })
            .SelectMany(telescope => catalogue.Telescopes.GetValueOrDefault(telescope!.Id!)?.Included ?? [])
            .Select(catalogue.Find)
            .OfType<Item>();
}
