using System.Threading.RateLimiting;

namespace Evenstep.Service.Keys;

/// <summary>How often a key may be used: so many requests a minute, which may also come all at once.</summary>
internal sealed class KeyRate : IDisposable
{
    public const int MostPerMinute = 60_000;

    /// <summary>Batches wait their turn in here, each with one line.</summary>
    private const int MostWaiting = 10_000;

    /// <summary>How many refills a minute are frequent enough.</summary>
    private const int RefillsPerMinute = 600;

    private readonly TokenBucketRateLimiter bucket;

    public KeyRate(int perMinute)
    {
        PerMinute = perMinute;
        var atOnce = (perMinute + RefillsPerMinute - 1) / RefillsPerMinute;
        bucket = new TokenBucketRateLimiter(new TokenBucketRateLimiterOptions
        {
            TokenLimit = perMinute,
            TokensPerPeriod = atOnce,
            ReplenishmentPeriod = TimeSpan.FromMinutes(1) * atOnce / perMinute,
            QueueLimit = MostWaiting,

            // A single request goes before the lines of a batch, which are in no hurry.
            QueueProcessingOrder = QueueProcessingOrder.NewestFirst,
        });
    }

    public int PerMinute { get; }

    /// <summary>How many requests there is room for now.</summary>
    public int Left => (int)(bucket.GetStatistics()?.CurrentAvailablePermits ?? 0);

    /// <summary>Takes note of a request, or says how long to wait before the next.</summary>
    /// <returns>Null where there was room for it.</returns>
    public TimeSpan? Use()
    {
        using var lease = bucket.AttemptAcquire();
        return lease.IsAcquired ? null : lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : TimeSpan.FromMinutes(1);
    }

    /// <summary>Waits until there is room for a line of a batch.</summary>
    public async ValueTask WaitAsync(CancellationToken gone)
    {
        while (true)
        {
            using var lease = await bucket.AcquireAsync(1, gone);
            if (lease.IsAcquired)
            {
                return;
            }

            // Too many wait already.
            await Task.Delay(lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : TimeSpan.FromSeconds(1), gone);
        }
    }

    public void Dispose() => bucket.Dispose();
}
