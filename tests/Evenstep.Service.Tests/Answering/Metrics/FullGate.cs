using Evenstep.Service.Answering.Scheduling;

namespace Evenstep.Service.Tests.Answering.Metrics;

/// <summary>A gate whose slots are all taken, until it is opened. Its clock must stand still, or the slots are lent.</summary>
internal sealed class FullGate : IAsyncDisposable
{
    private readonly ManualResetEventSlim open = new();
    private readonly Task[] taken;
    private int held;

    private FullGate(SolveGate gate) => taken =
    [
        .. Enumerable.Range(0, Environment.ProcessorCount).Select(_ => Task.Run(() => gate.RunAsync(_ => Hold(), CancellationToken.None))),
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
