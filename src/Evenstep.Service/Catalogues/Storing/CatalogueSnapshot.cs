using System.Collections.Immutable;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>The stored catalogues that one owner sees, as they were at one moment: everyone's, and its own.</summary>
/// <param name="owner">Whose.</param>
/// <param name="everyones">The catalogues of files.</param>
/// <param name="own">The owner's.</param>
/// <param name="isWhole">Whether the storage has been read to the end once.</param>
/// <param name="damage">Why it cannot be, as far as only whoever runs the service can mend it.</param>
internal sealed class CatalogueSnapshot(
    Owner owner, ImmutableSortedDictionary<string, Catalogue> everyones, ImmutableSortedDictionary<string, Catalogue> own, bool isWhole, string? damage = null)
{
    public const string DemoId = "demo";

    private const int MostNamed = 10;

    /// <summary>All of them, by id.</summary>
    /// <exception cref="StorageAwayException">It is not known yet which there are.</exception>
    /// <exception cref="StorageBrokenException">It cannot be known.</exception>
    public IEnumerable<Catalogue> All => !isWhole ? throw NotRead() : everyones.Values
        .Concat(own.Where(pair => !everyones.ContainsKey(pair.Key)).Select(pair => pair.Value))
        .OrderBy(catalogue => catalogue.Id, StringComparer.Ordinal);

    /// <summary>A catalogue by its id, or null if there is none.</summary>
    /// <exception cref="StorageAwayException">It is not known yet whether there is one.</exception>
    public Catalogue? Find(string id) =>
        everyones.GetValueOrDefault(id) ?? own.GetValueOrDefault(id) ?? (isWhole ? null : throw NotRead());

    private Exception NotRead() => damage is null ? StorageAwayException.NotReadYet() : new StorageBrokenException(damage);

    /// <summary>Whether a catalogue is of a file, so that nobody can change it by HTTP.</summary>
    public bool IsEveryones(string id) => everyones.ContainsKey(id);

    /// <summary>Whose a catalogue of this snapshot is: that of a file is nobody's own.</summary>
    public Owner OwnerOf(string id) => IsEveryones(id) ? Owner.Nobody : owner;

    /// <summary>Says that there is no catalogue of an id, and what there is.</summary>
    public ErrorMessage NoSuch(string id)
    {
        List<string> ids = [.. everyones.Keys.Union(own.Keys).Order(StringComparer.Ordinal)];
        var more = ids.Count > MostNamed ? ErrorMessage.Of("error/no-such-catalogue/more", ("count", ids.Count - MostNamed)) : ErrorMessage.Nothing;
        return ErrorMessage.Of(
            "error/no-such-catalogue", ("id", ErrorText.Quoted(id)), ("hint", NearestName.HintOn(id, ids)), ("stored", ErrorText.List(ids.Take(MostNamed))),
            ("more", more));
    }

    /// <summary>The demo catalogue that lies beside the assembly, and nothing else.</summary>
    public static CatalogueSnapshot WithDemo() =>
        new(Owner.Nobody, CatalogueFiles.WithDemo(), ImmutableSortedDictionary<string, Catalogue>.Empty, isWhole: true);
}
