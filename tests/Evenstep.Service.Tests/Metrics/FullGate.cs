using Evenstep.Service.Recommendations;

namespace Evenstep.Service.Tests.Metrics;

/// <summary>A gate whose places are all taken, until it is opened.</summary>
internal sealed class FullGate : IAsyncDisposable
{
    private readonly ManualResetEventSlim open = new();
    private readonly Task[] taken;
    private int held;

    private FullGate(SolveGate gate) => taken =
    [
        .. Enumerable.Range(0, Environment.ProcessorCount).Select(_ => Task.Run(() => gate.RunAsync(Hold, CancellationToken.None))),
    ];

    public static async Task<FullGate> OfAsync(SolveGate gate)
    {
        var full = new FullGate(gate);
        await Eventually.TrueAsync(() => Volatile.Read(ref full.held) == Environment.ProcessorCount);
        return full;
    }

    public async ValueTask DisposeAsync()
    {
        open.Set();
        await Task.WhenAll(taken);
        open.Dispose();
    }

    private bool Hold()
    {
        Interlocked.Increment(ref held);
        open.Wait();
        return true;
    }
}
