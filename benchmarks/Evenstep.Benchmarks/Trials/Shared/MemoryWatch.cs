namespace Evenstep.Benchmarks.Trials;

/// <summary>Looks at a service's memory now and then, and kills the service where it holds more than it may.</summary>
internal sealed class MemoryWatch : IAsyncDisposable
{
    private readonly CancellationTokenSource ends = new();
    private readonly Task watching;

    public MemoryWatch(TrialService service, double mostMegabytes, TimeSpan interval)
    {
        Before = service.ResidentMegabytes;
        watching = WatchAsync(service, mostMegabytes, interval);
    }

    /// <summary>Megabytes resident as the watch began.</summary>
    public double Before { get; }

    /// <summary>The most megabytes seen resident since.</summary>
    public double Peak { get; private set; }

    /// <summary>Whether the service was killed for its memory.</summary>
    public bool HasKilled { get; private set; }

    /// <summary>What was seen, with the time since the watch began.</summary>
    public List<(TimeSpan At, double Megabytes)> Samples { get; } = [];

    public async ValueTask DisposeAsync()
    {
        await ends.CancelAsync();
        await watching;
        ends.Dispose();
    }

    private async Task WatchAsync(TrialService service, double mostMegabytes, TimeSpan interval)
    {
        var started = TimeProvider.System.GetTimestamp();
        while (!ends.IsCancellationRequested && !service.HasExited)
        {
            var now = service.ResidentMegabytes;
            Peak = Math.Max(Peak, now);
            Samples.Add((TimeProvider.System.GetElapsedTime(started), now));
            if (now > mostMegabytes)
            {
                HasKilled = true;
                service.Kill();
            }

            await Task.Delay(interval, ends.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}
