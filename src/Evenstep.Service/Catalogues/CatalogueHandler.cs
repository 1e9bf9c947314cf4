using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Catalogues;

/// <summary>What became of a change, or the answer to one that was refused.</summary>
/// <param name="Catalogue">What is stored now; null if nothing is.</param>
/// <param name="IsNew">Whether there was none before.</param>
/// <param name="Refusal">Null for a change that went through.</param>
internal sealed record Change(Catalogue? Catalogue, bool IsNew, ProblemResult? Refusal = null)
{
    /// <summary>What of the catalogue can hardly be right.</summary>
    public WarningList Warnings { get; init; } = new();

    public static Change Refused(ProblemResult refusal) => new(null, false, refusal);
}

/// <summary>
/// Changes what is stored. Each change is worked out from the version that is stored, and takes its place only if it is
/// still there; if it is not, the change is worked out again.
/// </summary>
internal sealed class CatalogueHandler(CatalogueStore store, StorageReader reader, CatalogueRegistry registry)
{
    private const int MostAttempts = 20;
    /// <summary>A power of two.</summary>
    private const int Queues = 64;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>In this process, changes to one catalogue take turns, so that only those of other instances come between. Where two catalogues share a queue,
    /// one waits in vain: nothing worse.</summary>
    private readonly SemaphoreSlim[] turns = [.. Enumerable.Range(0, Queues).Select(_ => new SemaphoreSlim(1))];

    /// <summary>Stores a catalogue in place of whatever there is.</summary>
    /// <param name="key">Which catalogue.</param>
    /// <param name="make">Makes it, knowing what is stored, or refuses.</param>
    /// <param name="conditions">What the sender expects to be stored.</param>
    /// <param name="cancellationToken">The sender waits no more.</param>
    public Task<Change> PutAsync(CatalogueKey key, Func<Catalogue?, Change> make, Preconditions conditions, CancellationToken cancellationToken) =>
        ChangeAsync(key, current => conditions.RefusalFor(current?.Version) is { } refusal ? Change.Refused(refusal) : make(current), cancellationToken);

    /// <summary>Stores what is made of the catalogue that there is.</summary>
    /// <param name="key">Which catalogue.</param>
    /// <param name="change">Makes the next version of this one, or refuses.</param>
    /// <param name="conditions">What the sender expects to be stored.</param>
    /// <param name="cancellationToken">The sender waits no more.</param>
    public Task<Change> ReviseAsync(
        CatalogueKey key, Func<Catalogue, Change> change, Preconditions conditions, CancellationToken cancellationToken) => ChangeAsync(
        key,
        current => current is null ? Change.Refused(NotFound(key))
            : conditions.RefusalFor(current.Version) is { } refusal ? Change.Refused(refusal)
            : change(current),
        cancellationToken);

    /// <summary>Deletes a catalogue.</summary>
    public Task<Change> DeleteAsync(CatalogueKey key, Preconditions conditions, CancellationToken cancellationToken) =>
        ReviseAsync(key, _ => new Change(null, false), conditions, cancellationToken);

    public ProblemResult NotFound(CatalogueKey key) => new(ProblemKind.NotFound, registry.Of(key.Owner).NoSuch(key.Id));

    private async Task<Change> ChangeAsync(CatalogueKey key, Func<Catalogue?, Change> decide, CancellationToken cancellationToken)
    {
        if (registry.Of(key.Owner).IsEveryones(key.Id))
        {
            return Change.Refused(new ProblemResult(
                ProblemKind.ReadOnly,
                $"The catalogue `{key.Id}` is everyone's and comes with the service; it cannot be changed. Store one of your own under another id."));
        }

        var turn = turns[key.GetHashCode() & (Queues - 1)];
        if (!await turn.WaitAsync(Patience, cancellationToken))
        {
            throw StorageAwayException.Busy();
        }

        try
        {
            return await TryAsync(key, decide, cancellationToken);
        }
        finally
        {
            turn.Release();
        }
    }

    private async Task<Change> TryAsync(CatalogueKey key, Func<Catalogue?, Change> decide, CancellationToken cancellationToken)
    {
        for (var attempt = 0; attempt < MostAttempts; attempt++)
        {
            var current = await reader.FindAsync(key, cancellationToken);
            var change = decide(current);
            if (change.Refusal is not null || change.Catalogue?.Version == current?.Version)
            {
                return change;
            }

            if (await store.ReplaceAsync(key, current?.Version, change.Catalogue, cancellationToken) is { } revision)
            {
                registry.Take(key, change.Catalogue, revision);
                return change;
            }
        }

        throw StorageAwayException.Busy();
    }
}
