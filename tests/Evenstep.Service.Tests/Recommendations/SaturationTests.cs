using Evenstep.Service.Certifying;
using Evenstep.Service.Recommendations;
using Evenstep.Service.Tests.Metrics;
using Microsoft.Extensions.Time.Testing;

namespace Evenstep.Service.Tests.Recommendations;

/// <summary>When more is asked than can be answered in time, single requests are turned away, and told when to come again.</summary>
public sealed class SaturationTests
{
    private const int MostWaiting = 2;

    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(10);

    private readonly FakeTimeProvider clock = new();
    private readonly SolvePlaces places;

    public SaturationTests() => places = new SolvePlaces(1, new Patience(MostWaiting, LongestWait), clock);

    [Fact]
    public async Task Who_finds_too_many_waiting_is_turned_away_and_told_how_long_the_first_of_them_has_waited()
    {
        using var busy = await TakeAsync(Lane.Single);
        List<Task<SolveStay>> waiting = [TakeAsync(Lane.Single), TakeAsync(Lane.Single)];
        clock.Advance(TimeSpan.FromSeconds(4));

        var saturated = await Assert.ThrowsAsync<SaturatedException>(() => TakeAsync(Lane.Single));

        Assert.Equal(TimeSpan.FromSeconds(4), saturated.RetryAfter);
        Assert.Equal((1, MostWaiting), (places.InUse, places.Waiting));
        Assert.All(waiting, one => Assert.False(one.IsCompleted));
    }

    [Fact]
    public async Task Who_has_waited_too_long_is_turned_away_and_the_next_gets_the_place()
    {
        var busy = await TakeAsync(Lane.Single);
        var first = TakeAsync(Lane.Single);
        clock.Advance(LongestWait / 2);
        var second = TakeAsync(Lane.Single);
        clock.Advance(LongestWait / 2);

        await Assert.ThrowsAsync<SaturatedException>(() => first);
        Assert.False(second.IsCompleted);
        busy.Dispose();
        Assert.Equal(Tenure.Single, (await second).Tenure);
    }

    [Fact]
    public async Task Lines_of_a_batch_wait_without_end()
    {
        var busy = await TakeAsync(Lane.Batch);
        List<Task<SolveStay>> lines = [.. Enumerable.Range(0, MostWaiting + 3).Select(_ => TakeAsync(Lane.Batch))];
        clock.Advance(100 * LongestWait);

        busy.Dispose();
        foreach (var line in lines)
        {
            (await line).Dispose();
        }
    }

    [Fact]
    public async Task Whoever_has_a_place_keeps_it_however_long_the_solve_takes()
    {
        var busy = await TakeAsync(Lane.Single);
        var next = TakeAsync(Lane.Single);
        busy.Dispose();
        using var stay = await next;

        clock.Advance(2 * LongestWait);

        Assert.False(stay.IsBiddenToLeave);
        Assert.Equal(1, places.InUse);
    }

    [Fact]
    public async Task Over_http_it_is_503_with_retry_after_and_what_is_known_already_is_answered()
    {
        await using var service = new WatchedService(null, (Patience.MostWaitingKey, "0"), (CertifySettings.ShareKey, "0"));
        var known = Repository.Example("recommendation-shortest");
        Assert.Equal(200, (await service.RecommendAsync(known)).Status);
        var other = Repository.Example("recommendation-spectacles");
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            var refused = await service.RecommendAsync(other);

            Assert.Equal((503, "10"), (refused.Status, refused.RetryAfter));
            Assert.Equal("/problems/saturated", refused.Json.GetProperty("type").GetString());
            Assert.Equal(200, (await service.RecommendAsync(known)).Status);
        }

        Assert.Equal(200, (await service.RecommendAsync(other)).Status);
    }

    [Theory]
    [InlineData(Patience.MostWaitingKey, "-1")]
    [InlineData(Patience.LongestWaitKey, "0")]
    public void Settings_out_of_range_stop_the_start(string key, string value)
    {
        using var service = new Service(null, (key, value));

        var failure = Assert.ThrowsAny<Exception>(() => service.Services);

        Assert.Contains(key, failure.ToString(), StringComparison.Ordinal);
    }

    private Task<SolveStay> TakeAsync(Lane lane) => places.TakeAsync(lane, mayLodge: false, CancellationToken.None);
}
