using System.Threading.RateLimiting;

namespace Evenstep.Service.Http.Authentication;

/// <summary>How often a key may be used: so many requests a minute, which may also come all at once. A request that turns out
/// to cost more than one is charged afterwards.</summary>
internal sealed class KeyRate : IDisposable
{
    public const int MostPerMinute = 60_000;

    /// <summary>Batches wait their turn in here, each with one line.</summary>
    private const int MostWaiting = 10_000;

    /// <summary>How many refills a minute are frequent enough.</summary>
    private const int RefillsPerMinute = 600;

    private readonly Lock charging = new();
    private readonly TokenBucketRateLimiter bucket;
    private readonly TimeSpan perRequest;
    private int owed;

    public KeyRate(int perMinute)
    {
        PerMinute = perMinute;
        perRequest = TimeSpan.FromMinutes(1) / perMinute;
        var atOnce = (perMinute + RefillsPerMinute - 1) / RefillsPerMinute;
        bucket = new TokenBucketRateLimiter(new TokenBucketRateLimiterOptions
        {
            TokenLimit = perMinute,
            TokensPerPeriod = atOnce,
            ReplenishmentPeriod = atOnce * perRequest,
            QueueLimit = MostWaiting,

            // A single request goes before the lines of a batch, which are in no hurry.
            QueueProcessingOrder = QueueProcessingOrder.NewestFirst,
        });
    }

    public int PerMinute { get; }

    /// <summary>How many requests there is room for now.</summary>
    public int Left => Owed > 0 ? 0 : InBucket;

    /// <summary>How long to wait before the next request; null if there is room for one now.</summary>
    public TimeSpan? WaitNeeded => Owed is > 0 and var still ? still * perRequest : InBucket > 0 ? null : perRequest;

    private int InBucket => (int)(bucket.GetStatistics()?.CurrentAvailablePermits ?? 0);

    /// <summary>What is still owed once it has been paid from what is left.</summary>
    private int Owed
    {
        get
        {
            if (Volatile.Read(ref owed) == 0)
            {
                return 0;
            }

            lock (charging)
            {
                var pays = Math.Min(owed, InBucket);
                using var lease = bucket.AttemptAcquire(pays);
                owed -= lease.IsAcquired ? pays : 0;
                return owed;
            }
        }
    }

    /// <summary>Takes note of a request, or says how long to wait before the next.</summary>
    /// <returns>Null where there was room for it.</returns>
    public TimeSpan? Use()
    {
        if (Owed > 0)
        {
            return WaitNeeded;
        }

        using var lease = bucket.AttemptAcquire();
        return lease.IsAcquired ? null : lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : TimeSpan.FromMinutes(1);
    }

    /// <summary>Charges for so many requests more. What is not left is owed, but for no longer than a minute.</summary>
    public void Charge(int requests)
    {
        lock (charging)
        {
            owed = Math.Min(PerMinute, owed + requests);
        }
    }

    /// <summary>Waits until there is room for a line of a batch.</summary>
    public async ValueTask WaitAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            if (Owed is > 0 and var still)
            {
                await Task.Delay(still * perRequest, cancellationToken);
                continue;
            }

            using var lease = await bucket.AcquireAsync(1, cancellationToken);
            if (lease.IsAcquired)
            {
                return;
            }

            // Too many wait already.
            await Task.Delay(lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : TimeSpan.FromSeconds(1), cancellationToken);
        }
    }

    public void Dispose() => bucket.Dispose();
}
