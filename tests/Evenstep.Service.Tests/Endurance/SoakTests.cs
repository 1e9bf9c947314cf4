using Evenstep.Benchmarks.Trials;
using Xunit.Abstractions;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>A minute of mixed load at default settings; the recorded run takes an hour.</summary>
public sealed class SoakTests(ITestOutputHelper output)
{
    private const int Callers = 6;

    /// <summary>It is about 400 MB, with a request of the heaviest 550. A minute is no measurement: this sees that what is kept is bounded.</summary>
    private const double MostMegabytes = 600;

    private static readonly TimeSpan Time = TimeSpan.FromMinutes(1);

    [Fact]
    public async Task A_minute_of_mixed_load_is_answered_as_declared_and_holds_no_more_memory_than_it_may()
    {
        using var service = await TrialService.StartAsync(Trial.Start());
        await MixedLoad.PrepareAsync(service);
        await using var watch = new MemoryWatch(service, mostMegabytes: 4000, TimeSpan.FromSeconds(1));

        var results = await new MixedLoad(service).RunAsync(Callers, Time, seed: 1);

        output.WriteLine(
            $"{string.Join(", ", results.Statuses.OrderBy(one => one.Key).Select(one => $"{one.Key}: {one.Value}"))}; " +
            $"{watch.Before:F0} to at most {watch.Peak:F0} MB");
        Assert.Empty(results.Failures);
        Assert.InRange(results.Statuses.GetValueOrDefault(200), 100, int.MaxValue);
        Assert.InRange(watch.Peak, 0, MostMegabytes);
    }
}
