namespace Evenstep.Service.Catalogues.Storing;

/// <summary>Reads the stored catalogues at start, and again whenever another instance has changed any; keeps trying while the storage is away.</summary>
internal sealed partial class StorageWatch(CatalogueStore store, StorageReader reader, CatalogueRegistry registry, ILogger<StorageWatch> logger)
    : BackgroundService
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(0.5);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var wasAway = false;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await store.PrepareAsync(stoppingToken);
                await FollowAsync(wasAway, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
#pragma warning disable CA1031 // Whatever went wrong, reads go on from memory, and it may be over soon.
            catch (Exception exception)
#pragma warning restore CA1031
            {
                registry.Damage = (exception as StorageBrokenException)?.Message;
                if (!wasAway)
                {
                    LogAway(store.Where, exception.Message, exception);
                }

                wasAway = true;
                await Task.Delay(Patience, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    /// <summary>Follows the changes until something goes wrong.</summary>
    private async Task FollowAsync(bool wasAway, CancellationToken stopping)
    {
        var known = await reader.CatchUpAsync(stopping);
        registry.Damage = null;
        if (wasAway)
        {
            LogBack();
        }

        while (true)
        {
            await store.WaitForChangeAsync(stopping);
            if (await store.RevisionAsync(stopping) != known)
            {
                known = await reader.CatchUpAsync(stopping);
            }
        }
    }

    [LoggerMessage(LogLevel.Error, "The storage of catalogues, {Where}, cannot be used. {Reason} Reads go on from memory; nothing can be stored.")]
    private partial void LogAway(string where, string reason, Exception exception);

    [LoggerMessage(LogLevel.Information, "The storage of catalogues can be used again.")]
    private partial void LogBack();
}
