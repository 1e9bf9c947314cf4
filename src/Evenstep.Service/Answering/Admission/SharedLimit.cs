using System.Threading.RateLimiting;

namespace Evenstep.Service.Answering.Admission;

/// <summary>How many of something may be under way at once, and how many of one caller's. Nobody waits.</summary>
internal sealed class SharedLimit : IDisposable
{
    private readonly int most;
    private readonly ConcurrencyLimiter all;
    private readonly PartitionedRateLimiter<string> callers;

    /// <param name="most">How many.</param>
    /// <param name="share">The share of them that one caller may take, above 0 to 1.</param>
    public SharedLimit(int most, double share)
    {
        this.most = most;
        all = new ConcurrencyLimiter(OptionsOf(most));
        var ofOne = OptionsOf(Math.Max(1, (int)Math.Ceiling(most * share)));
        callers = PartitionedRateLimiter.Create<string, string>(
            caller => RateLimitPartition.GetConcurrencyLimiter(caller, _ => ofOne), StringComparer.Ordinal);
    }

    /// <summary>How many are under way.</summary>
    public int InUse => most - (int)(all.GetStatistics()?.CurrentAvailablePermits ?? most);

    /// <summary>Lets one of a caller's in.</summary>
    /// <param name="caller">The caller.</param>
    /// <param name="leases">Takes what must be given back.</param>
    /// <returns>Null, or why it is not let in.</returns>
    public RefusalReason? TryEnter(string caller, Leases leases) =>
        !leases.TryAdd(all.AttemptAcquire()) ? RefusalReason.Saturated
        : !leases.TryAdd(callers.AttemptAcquire(caller)) ? RefusalReason.ShareUsedUp
        : null;

    public void Dispose()
    {
        all.Dispose();
        callers.Dispose();
    }

    private static ConcurrencyLimiterOptions OptionsOf(int most) => new() { PermitLimit = most, QueueLimit = 0 };
}

/// <summary>What was taken for a request, and is given back with it.</summary>
internal sealed class Leases : IDisposable
{
    private readonly List<RateLimitLease> taken = new(3);

    /// <summary>Whether it was acquired.</summary>
    public bool TryAdd(RateLimitLease lease)
    {
        taken.Add(lease);
        return lease.IsAcquired;
    }

    public void Dispose() => taken.ForEach(lease => lease.Dispose());
}
