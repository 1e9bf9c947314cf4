using System.Collections.Immutable;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>
/// The stored catalogues of all owners, in memory: what readers read from, even while the storage is away. Whoever takes a
/// <see cref="CatalogueSnapshot"/> sees one moment; changes make new snapshots.
/// </summary>
/// <param name="everyones">The catalogues of files.</param>
internal sealed class CatalogueRegistry(ImmutableSortedDictionary<string, Catalogue> everyones)
{
    /// <summary>In revisions: far more than can happen between reading something and taking it in here.</summary>
    private const long LongBefore = 10_000;

    private static readonly ImmutableSortedDictionary<string, Catalogue> Empty = ImmutableSortedDictionary.Create<string, Catalogue>(StringComparer.Ordinal);

    private readonly Lock changing = new();
    /// <summary>In which revision each was written or deleted, as far as is known here.</summary>
    private readonly Dictionary<CatalogueKey, long> revisions = [];
    private volatile ImmutableDictionary<Owner, ImmutableSortedDictionary<string, Catalogue>> own =
        ImmutableDictionary<Owner, ImmutableSortedDictionary<string, Catalogue>>.Empty;
    private volatile bool isWhole;
    private volatile string? damage;

    /// <summary>Whether the storage has been read to the end once.</summary>
    public bool IsWhole => isWhole;

    /// <summary>Why what is stored could not be read, as far as only whoever runs the service can mend it; null otherwise.</summary>
    public string? Damage
    {
        get => damage;
        set => damage = value;
    }

    public CatalogueSnapshot Of(Owner owner) => new(owner, everyones, own.GetValueOrDefault(owner, Empty), isWhole, damage);

    /// <summary>An owner's catalogue as it is known here, or null.</summary>
    public Catalogue? Find(CatalogueKey key) => own.GetValueOrDefault(key.Owner, Empty).GetValueOrDefault(key.Id);

    /// <summary>Takes in what was written in a revision, unless something later is known: news may overtake each other.</summary>
    /// <param name="key">Which catalogue.</param>
    /// <param name="catalogue">The catalogue, or null where it was deleted.</param>
    /// <param name="revision">The revision of the storage in which that happened.</param>
    public void Take(CatalogueKey key, Catalogue? catalogue, long revision)
    {
        lock (changing)
        {
            if (revisions.GetValueOrDefault(key, long.MinValue) >= revision)
            {
                return;
            }

            revisions[key] = revision;
            var snapshot = own.GetValueOrDefault(key.Owner, Empty);
            own = own.SetItem(key.Owner, catalogue is null ? snapshot.Remove(key.Id) : snapshot.SetItem(key.Id, catalogue));
        }
    }

    /// <summary>Holds what is known against all that is stored: drops what is gone, and returns what is behind.</summary>
    public IReadOnlyList<StoredVersion> Compare(StoredVersions stored)
    {
        var there = stored.Catalogues.Select(one => one.Key).ToHashSet();
        foreach (var key in own.SelectMany(snapshot => snapshot.Value.Keys.Select(id => new CatalogueKey(snapshot.Key, id))).Where(key => !there.Contains(key)))
        {
            Take(key, null, stored.Revision);
        }

        lock (changing)
        {
            return [.. stored.Catalogues.Where(one => revisions.GetValueOrDefault(one.Key, long.MinValue) < one.Revision)];
        }
    }

    /// <summary>Notes that all that was stored at a revision is known, and forgets what was deleted long before.</summary>
    public void Finish(long revision)
    {
        lock (changing)
        {
            foreach (var key in revisions.Where(pair => pair.Value < revision - LongBefore && Find(pair.Key) is null).Select(pair => pair.Key).ToList())
            {
                revisions.Remove(key);
            }

            isWhole = true;
        }
    }
}
