using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Catalogues;

/// <summary>Changes items of a catalogue: all that is asked for, or nothing.</summary>
internal static class ItemRevision
{
    /// <summary>Changes one item.</summary>
    /// <param name="catalogue">Of which it is.</param>
    /// <param name="itemId">As it stands in an address.</param>
    /// <param name="patch">A JSON Merge Patch of it.</param>
    public static Change MakeOne(Catalogue catalogue, string itemId, JsonElement patch)
    {
        var id = PathId.Meant(itemId, catalogue.Listed);
        return catalogue.Listed.ContainsKey(id)
            ? MakeAll(catalogue, (_, _) => [new ItemChange(id, patch, RequestPointer.Root)])
            : Change.Refused(new ProblemResult(ProblemKind.NotFound, NoSuch(id, catalogue)));
    }

    /// <summary>Changes all that are read.</summary>
    /// <param name="catalogue">Of which they are.</param>
    /// <param name="read">Reads them, and reports what it cannot read and what it leaves out.</param>
    public static Change MakeAll(Catalogue catalogue, Func<Faults, WarningList, IReadOnlyCollection<ItemChange>> read)
    {
        var (faults, warnings) = (new Faults(), new WarningList());
        var items = Make(catalogue, read(faults, warnings), faults, warnings);
        return faults.Any
            ? Change.Refused(ProblemResult.Of(faults))
            : new Change(CatalogueReader.Revise(catalogue, items), IsNew: false) { Warnings = warnings };
    }

    /// <summary>All items, with the changes made that could be.</summary>
    private static List<ItemRequest?> Make(Catalogue catalogue, IReadOnlyCollection<ItemChange> changes, Faults faults, WarningList warnings)
    {
        var changed = new Dictionary<string, ItemRequest>(StringComparer.Ordinal);
        var seen = new Dictionary<string, RequestPointer>(StringComparer.Ordinal);
        foreach (var change in changes)
        {
            if (IsOfOneItem(change, catalogue, seen, faults) && Revise(catalogue.Listed[change.Id!], change, faults) is { } item)
            {
                changed.Add(change.Id!, item);
                ItemChecks.Check(item, change.At, warnings);
            }
        }

        return [.. catalogue.Request.Items!.Select(item => changed.GetValueOrDefault(item!.Id!, item))];
    }

    private static bool IsOfOneItem(ItemChange change, Catalogue catalogue, Dictionary<string, RequestPointer> seen, Faults faults)
    {
        var at = change.At.To(nameof(ItemRequest.Id));
        if (change is { Id: null, Patch.ValueKind: not JsonValueKind.Object })
        {
            faults.Add(
                change.At, FaultCode.WrongType,
                () => $"{ErrorText.Of(change.Patch)} was given; it must be an object with the `id` of an item and the fields that change.");
        }
        else if (change.Id is not { } id)
        {
            faults.Add(at, FaultCode.Missing, () => "`id` is missing, or no text; it must be the id of an item of the catalogue.");
        }
        else if (!catalogue.Listed.ContainsKey(id))
        {
            faults.Add(at, FaultCode.UnknownItem, () => NoSuch(id, catalogue));
        }
        else if (!seen.TryAdd(id, change.At))
        {
            faults.Add(at, FaultCode.Duplicate, () => $"{ErrorText.Quoted(id)} is changed at {seen[id]} too; put both changes together.");
        }
        else
        {
            return true;
        }

        return false;
    }

    private static ErrorMessage NoSuch(string id, Catalogue catalogue) => NoSuchItem.Of(id, catalogue.Listed.Keys, "error/no-such-item/change");

    /// <summary>Of a field that is to be taken away nothing is left in the item: a misspelt one would not be seen there.</summary>
    private static void ReportUnknownNulls(ItemChange change, Faults faults)
    {
        if (change.Patch.ValueKind != JsonValueKind.Object)
        {
            return;
        }

        foreach (var name in change.Patch.EnumerateObject().Where(property => property.Value.ValueKind == JsonValueKind.Null).Select(property => property.Name))
        {
            ItemShapes.Changes.ReportUnknown(name, change.At, faults);
        }
    }

    private static ItemRequest? Revise(ItemRequest item, ItemChange change, Faults faults)
    {
        if (!MergePatch.Check(change.Patch, change.At, faults))
        {
            return null;
        }

        ReportUnknownNulls(change, faults);

        var patched = MergePatch.Apply(JsonObject.Create(CatalogueContent.Write(item)), change.Patch);
        var revised = ItemShapes.ForSale.Read(JsonSerializer.SerializeToElement(patched), change.At, faults);
        if (revised?.Id is { } id && id != change.Id)
        {
            faults.Add(
                change.At.To(nameof(ItemRequest.Id)), FaultCode.Unchangeable,
                () => $"{ErrorText.Quoted(id)} was given; the id of an item cannot change. Leave it out, or store the catalogue anew.");
        }

        // What the table of fields cannot see is reported at the change, too.
        return revised is null || ItemReader.Read(revised, revised.Id, change.At, faults) is null ? null : revised;
    }
}
