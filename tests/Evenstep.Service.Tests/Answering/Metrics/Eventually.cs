using System.Diagnostics;

namespace Evenstep.Service.Tests.Answering.Metrics;

internal static class Eventually
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(10);

    /// <summary>Waits for what happens in the background.</summary>
    public static Task TrueAsync(Func<bool> condition) => TrueAsync(() => Task.FromResult(condition()));

    /// <summary>Waits for what happens elsewhere.</summary>
    public static async Task TrueAsync(Func<Task<bool>> condition)
    {
        var started = Stopwatch.GetTimestamp();
        while (!await condition())
        {
            Assert.True(Stopwatch.GetElapsedTime(started) < Patience, "It did not happen in time.");
            await Task.Delay(Pause);
        }
    }
}
