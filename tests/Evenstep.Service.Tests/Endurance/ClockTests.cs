using System.Globalization;
using Evenstep.Benchmarks.Trials;
using Evenstep.Service.Tests.Catalogues;
using Evenstep.Service.Tests.Http.Authentication;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>The clock of the machine is set forward and back by hours while the service runs.</summary>
public sealed class ClockTests : IDisposable
{
    private const int Rate = 60;
    private const string Page = "/v1/catalogues/demo/telescopes/jetty-112/recommendation?budget=200";

    private readonly JumpingClock clock = new();
    private readonly Keyed shop = new("shop", "shop");
    private readonly Keyed busy = new("busy", "busy") { Rate = Rate };

    [ClockFact]
    public async Task Rates_waits_and_kept_answers_stay_as_they_are()
    {
        using var service = await TrialService.StartAsync(Trial.Start([.. shop.Settings, .. busy.Settings]) with { Environment = clock.Environment });
        var tag = (await service.AskAsync(HttpMethod.Get, Page, null, shop.Header)).ETag!;
        foreach (var (hours, price) in ((int, int)[])[(0, 40), (5, 41), (-30, 42), (8760, 43)])
        {
            await clock.SetAsync(hours);

            await CheckRateAsync(service);
            Assert.Equal(200, (await service.AskAsync(HttpMethod.Post, Trial.Recommend, Trial.Small(150), shop.Header)).Status);
            Assert.Equal(304, (await service.AskAsync(HttpMethod.Get, Page, null, shop.Header, ("If-None-Match", tag))).Status);
            var stored = await service.AskAsync(HttpMethod.Put, "/v1/catalogues/shop", Wares.Json(price), shop.Header);
            Assert.Equal(
                (stored.ETag, 200),
                ((await service.AskAsync(HttpMethod.Get, "/v1/catalogues/shop", null, shop.Header)).ETag, stored.Status == 201 ? 200 : stored.Status));
            Assert.Equal(200, (await service.AskAsync(HttpMethod.Get, "/health/ready")).Status);
        }
    }

    public void Dispose() => clock.Dispose();

    /// <summary>However the clock is set, what is used up comes back within a minute, and no more than a minute's worth at once.</summary>
    private async Task CheckRateAsync(TrialService service)
    {
        var taken = 0;
        Answer answer;
        while ((answer = await service.AskAsync(HttpMethod.Get, "/v1/targets", null, busy.Header)).Status == 200)
        {
            taken++;
        }

        Assert.Equal(429, answer.Status);
        Assert.InRange(taken, 0, 3 * Rate);
        var seconds = int.Parse(answer.RetryAfter!, CultureInfo.InvariantCulture);
        Assert.InRange(seconds, 1, 60);
        await Task.Delay(TimeSpan.FromSeconds(seconds));
        Assert.Equal(200, (await service.AskAsync(HttpMethod.Get, "/v1/targets", null, busy.Header)).Status);
    }
}

/// <summary>
/// A wall clock for one process that can be set (libfaketime, which answers the process's questions for the time of day).
/// The clock that only counts on stays as it is, as on a machine whose time is set.
/// </summary>
internal sealed class JumpingClock : IDisposable
{
    private static readonly string? Library = Directory.Exists("/usr/lib")
        ? Directory.EnumerateDirectories("/usr/lib").Select(folder => Path.Combine(folder, "faketime", "libfaketimeMT.so.1")).FirstOrDefault(File.Exists)
        : null;

    private readonly string file = Path.GetTempFileName();

    public JumpingClock() => File.WriteAllText(file, "+0");

    /// <summary>Why there can be none; null if there can.</summary>
    public static string? Missing { get; } = Library is null ? "libfaketime is not installed; run tests/clock/prepare.sh." : null;

    public IReadOnlyList<(string, string)> Environment =>
        [
            ("LD_PRELOAD", Library!), ("DONT_FAKE_MONOTONIC", "1"), ("FAKETIME_DONT_FAKE_MONOTONIC", "1"), ("FAKETIME_TIMESTAMP_FILE", file),
            ("FAKETIME_CACHE_DURATION", "1")
        ];

    /// <summary>Returns once the process has surely seen it: it looks once a second.</summary>
    public async Task SetAsync(int hours)
    {
        await File.WriteAllTextAsync(file, string.Create(CultureInfo.InvariantCulture, $"{hours:+0;-0;+0}h"));
        await Task.Delay(TimeSpan.FromSeconds(2));
    }

    public void Dispose() => File.Delete(file);
}

/// <summary>A fact that needs a clock of its own: skipped without one on a developer's machine, failing without it where CI is set.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class ClockFactAttribute : FactAttribute
{
    public ClockFactAttribute()
    {
        if (string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")))
        {
            Skip = JumpingClock.Missing;
        }
    }
}
