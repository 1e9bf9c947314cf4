using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Scheduling;
using Microsoft.Extensions.Caching.Hybrid;

namespace Evenstep.Service.Answering.Caching;

/// <summary>Keeps proved answers, and makes each only once, however many callers ask for it at a time.</summary>
internal sealed class AnswerCache(HybridCache cache, ServiceMeter meter)
{
    private static readonly HybridCacheEntryOptions OnlyFind = new() { Flags = HybridCacheEntryFlags.DisableUnderlyingData };

    /// <summary>The answer, if it is kept.</summary>
    public async Task<FinishedAnswer?> FindAsync(string key, CancellationToken cancellationToken)
    {
        var found = await cache.GetOrCreateAsync<FinishedAnswer?>(
            key, _ => ValueTask.FromResult<FinishedAnswer?>(null), OnlyFind, cancellationToken: cancellationToken);
        if (found is not null)
        {
            meter.LookedUp(Lookup.Hit);
        }

        return found;
    }

    /// <summary>The answer, and whether it was made for this caller.</summary>
    /// <param name="key">From <see cref="AnswerKey"/>.</param>
    /// <param name="make">Makes the answer. It may outlive the request that it was given by, for others may wait for it too:
    /// it must use nothing that ends with that request. Its token is cancelled once nobody waits any more.</param>
    /// <param name="cancellationToken">This caller waits no more.</param>
    public async Task<(FinishedAnswer Answer, bool IsNew)> GetOrMakeAsync(
        string key, Func<CancellationToken, Task<FinishedAnswer>> make, CancellationToken cancellationToken)
    {
        var isNew = false;
        var claim = SolveClaim.Current;
        var coming = cache.GetOrCreateAsync(
            key,
            async nobodyWaits =>
            {
                isNew = true;

                // The cache calls this without the caller's execution context.
                SolveClaim.Current = claim;
                return await make(nobodyWaits);
            },
            cancellationToken: cancellationToken);
        // What is kept is there at once.
        var isKept = coming.IsCompleted;
        var answer = await coming;
        meter.LookedUp(isNew ? Lookup.Miss : isKept ? Lookup.Hit : Lookup.Joined);
        if (!answer.IsProved)
        {
            await cache.RemoveAsync(key, CancellationToken.None);
        }

        return (answer, isNew);
    }
}
