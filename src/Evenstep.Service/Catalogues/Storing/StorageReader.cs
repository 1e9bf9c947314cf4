using System.Text.Json;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>Reads stored catalogues into memory.</summary>
internal sealed class StorageReader(CatalogueStore store, CatalogueRegistry registry)
{
    /// <summary>Makes the registry hold what is stored.</summary>
    /// <exception cref="StorageBrokenException">Some cannot be read; the others are in the registry.</exception>
    public async Task<long> CatchUpAsync(CancellationToken cancellationToken)
    {
        var stored = await store.ListAsync(cancellationToken);
        List<StorageBrokenException> faults = [];
        foreach (var version in registry.Compare(stored))
        {
            try
            {
                await TakeAsync(version.Key, cancellationToken);
            }
            catch (StorageBrokenException exception)
            {
                faults.Add(exception);
            }
        }

        if (faults.Count > 0)
        {
            throw new StorageBrokenException(
                faults[0].Message, new InvalidDataException(string.Join(' ', faults.Select(fault => fault.InnerException!.Message))));
        }

        registry.Finish(stored.Revision);
        return stored.Revision;
    }

    /// <summary>The catalogue that is stored now, whatever is known in memory; null if there is none.</summary>
    public async Task<Catalogue?> FindAsync(CatalogueKey key, CancellationToken cancellationToken)
    {
        var known = registry.Find(key);
        var stored = await store.FindAsync(key, known?.Version, cancellationToken);
        return stored is null ? null : stored.Content is { } content ? Read(key, content) : known;
    }

    private async Task TakeAsync(CatalogueKey key, CancellationToken cancellationToken)
    {
        var known = registry.Find(key);
        if (await store.FindAsync(key, known?.Version, cancellationToken) is { } stored)
        {
            registry.Take(key, stored.Content is { } content ? Read(key, content) : known, stored.Revision);
        }
    }

    private static StorageBrokenException Damaged(CatalogueKey key, string how, Exception? cause) =>
        new(
            "A stored catalogue is damaged.",
            new InvalidDataException($"The catalogue `{key.Id}` of the owner {ErrorText.Quoted(key.Owner.Name)} cannot be read: {how}.", cause));

    private static Catalogue Read(CatalogueKey key, ReadOnlyMemory<byte> content)
    {
        var faults = new Faults();
        try
        {
            using var document = JsonDocument.Parse(content);
            return CatalogueReader.ReadStored(key.Id, document.RootElement, faults) ?? throw Damaged(key, string.Join("; ", faults.Shown), null);
        }
        catch (JsonException exception)
        {
            throw Damaged(key, "it is no JSON", exception);
        }
    }
}
