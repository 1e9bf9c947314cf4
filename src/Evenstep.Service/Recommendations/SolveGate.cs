namespace Evenstep.Service.Recommendations;

/// <summary>Lets only as many solves run at once as there are processors: more would only slow each other down.</summary>
internal sealed class SolveGate : IDisposable
{
    private readonly SemaphoreSlim places = new(Environment.ProcessorCount);
    private readonly Lock asideLock = new();
    private CancellationTokenSource? leaveAside;
    private int waiting;

    public int InUse => Environment.ProcessorCount - places.CurrentCount;

    public int Waiting => Volatile.Read(ref waiting);

    public async Task<T> RunAsync<T>(Func<T> solve, CancellationToken cancellation)
    {
        await EnterAsync(cancellation);
        try
        {
            return solve();
        }
        finally
        {
            places.Release();
        }
    }

    /// <summary>Runs work that nobody waits for, if a place is free; one such work at a time.</summary>
    /// <param name="work">The work. Its token is cancelled when a solve wants the place, and it must then end at once.</param>
    /// <param name="stopping">Ends the work too.</param>
    /// <returns>Whether a place was free.</returns>
    public bool TryRunAside(Action<CancellationToken> work, CancellationToken stopping)
    {
        if (!places.Wait(TimeSpan.Zero, stopping))
        {
            return false;
        }

        using var leave = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        try
        {
            SetAside(leave);
            if (Waiting > 0)
            {
                // Somebody came after the place was taken, and before it was known who has to leave.
                leave.Cancel();
            }

            work(leave.Token);
        }
        finally
        {
            SetAside(null);
            places.Release();
        }

        return true;
    }

    public void Dispose() => places.Dispose();

    private async Task EnterAsync(CancellationToken cancellation)
    {
        var entering = places.WaitAsync(cancellation);
        if (entering.IsCompleted)
        {
            await entering;
            return;
        }

        Interlocked.Increment(ref waiting);
        try
        {
            MakeRoom();
            await entering;
        }
        finally
        {
            Interlocked.Decrement(ref waiting);
        }
    }

    private void MakeRoom()
    {
        lock (asideLock)
        {
            leaveAside?.Cancel();
        }
    }

    private void SetAside(CancellationTokenSource? leave)
    {
        lock (asideLock)
        {
            leaveAside = leave;
        }
    }
}
