using Evenstep.Service.Catalogues;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>Finds what a page's path names, or says that it does not exist.</summary>
internal static class PagePath
{
    /// <summary>The id of the telescope that is meant.</summary>
    public static string TelescopeMeant(CatalogueSnapshot snapshot, string catalogueId, string part) =>
        PathId.Meant(part, snapshot.Find(catalogueId)?.Telescopes);

    /// <summary>The id of the item that is meant.</summary>
    public static string ItemMeant(CatalogueSnapshot snapshot, string catalogueId, string part) =>
        PathId.Meant(part, snapshot.Find(catalogueId)?.Items);

    /// <summary>Null if there is such a telescope.</summary>
    public static ProblemResult? RefusalOfTelescope(CatalogueSnapshot snapshot, string catalogueId, string telescopeId) =>
        snapshot.Find(catalogueId) is not { } catalogue ? NoCatalogue(snapshot, catalogueId)
        : catalogue.Telescopes.ContainsKey(telescopeId) ? null
        : Missing("telescope", telescopeId, catalogue.Telescopes.Keys);

    /// <summary>Null if there is such an item.</summary>
    public static ProblemResult? RefusalOfItem(CatalogueSnapshot snapshot, string catalogueId, string itemId) =>
        snapshot.Find(catalogueId) is not { } catalogue ? NoCatalogue(snapshot, catalogueId)
        : catalogue.Items.ContainsKey(itemId) ? null
        : Missing("item", itemId, catalogue.Items.Keys);

    private static ProblemResult NoCatalogue(CatalogueSnapshot snapshot, string id) => new(ProblemKind.NotFound, snapshot.NoSuch(id));

    private static ProblemResult Missing(string what, string id, IEnumerable<string> known)
    {
        var suggestion = NearestName.To(id, known) is { } nearest ? $" Did you mean `{nearest}`?" : "";
        return new ProblemResult(ProblemKind.NotFound, $"The catalogue has no {what} {ErrorText.Quoted(id)}.{suggestion} Give the id of one it has.");
    }
}
