using System.Net.Http.Headers;
using Evenstep.Service.Answering.Admission;
using Evenstep.Service.Answering.Health;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Answering.Solving;
using Evenstep.Service.Tests.Features.Batches;
using Evenstep.Service.Tests.Http.Authentication;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace Evenstep.Service.Tests.Answering.Admission;

/// <summary>What cannot be served soon is refused before it is read, and what is short is answered beside what is long.</summary>
public sealed class AdmissionTests
{
    private const string NotJson = "no JSON at all";

    private static readonly string Body = Repository.Example("recommendation-spectacles");

    [Fact]
    public async Task Small_requests_are_answered_while_twenty_long_solves_are_under_way()
    {
        using var mayEnd = new ManualResetEventSlim();
        var begun = 0;
        await using var service = new WatchedService(
            services =>
            {
                services.AddSingleton(_ => new SolveGate(1, SchedulerSettings.Usual, TimeProvider.System));
                services.AddSingleton<SecondProver>((_, _, budget) =>
                {
                    Interlocked.Increment(ref begun);
                    while (!mayEnd.IsSet)
                    {
                        budget.Look();
                    }

                    return true;
                });
            },
            (CertifySettings.ShareKey, "0"));
        var certified = Body.Replace("\"explain\": {", "\"explain\": { \"certify\": true,", StringComparison.Ordinal);
        var longOnes = Enumerable.Range(0, 20).Select(i => service.RecommendAsync(certified + new string(' ', i))).ToList();
        await Eventually.TrueAsync(() => Volatile.Read(ref begun) == 20);

        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(200, (await service.RecommendAsync(Body + new string(' ', i))).Status);
        }

        Assert.All(longOnes, one => Assert.False(one.IsCompleted));
        mayEnd.Set();
        Assert.All(await Task.WhenAll(longOnes), one => Assert.Equal(200, one.Status));
    }

    [Fact]
    public async Task Beyond_the_most_requests_it_is_503_with_retry_after_without_the_body_being_read()
    {
        await using var service = Of((AdmissionSettings.RequestsKey, "1"), (AdmissionSettings.ShareKey, "1"));
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            var first = service.RecommendAsync(Body);
            await Eventually.TrueAsync(() => service.Get<Admissions>().InFlight == 1);

            var refused = await service.RecommendAsync(NotJson);

            Assert.Equal((503, "1", "application/problem+json"), (refused.Status, refused.RetryAfter, refused.ContentType));
            Assert.Equal("/problems/saturated", refused.Problem.Type);
            Assert.Equal(1, service.CountOf(AdmissionMeter.Refusals, "saturated"));
            Assert.Equal(200, await StatusOfAsync(service, "/health/live"));
            Assert.Equal(200, await StatusOfAsync(service, "/health/ready"));
            Assert.Equal(200, await StatusOfAsync(service, "/metrics"));
            Assert.Equal(503, await StatusOfAsync(service, "/v1/targets"));
            Assert.False(first.IsCompleted);
        }

        await Eventually.TrueAsync(() => service.Get<Admissions>().InFlight == 0);
        Assert.Equal(400, (await service.RecommendAsync(NotJson)).Status);
    }

    [Fact]
    public async Task A_caller_with_its_share_under_way_gets_429_and_leaves_room_for_others()
    {
        await using var service = Of((AdmissionSettings.RequestsKey, "4"), (AdmissionSettings.ShareKey, "0.5"));
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            List<Task<Answer>> under = [service.RecommendAsync(Body), service.RecommendAsync(Body + " ")];
            await Eventually.TrueAsync(() => service.Get<Admissions>().InFlight == 2);

            var refused = await service.RecommendAsync(NotJson);

            Assert.Equal((429, "1"), (refused.Status, refused.RetryAfter));
            Assert.Equal("/problems/share-used-up", refused.Problem.Type);
            Assert.All(under, one => Assert.False(one.IsCompleted));
        }
    }

    [Fact]
    public void Each_caller_has_a_share_and_all_together_no_more_than_the_whole()
    {
        using var limit = new SharedLimit(3, 0.5);
        using var a = new Leases();
        using var b = new Leases();
        using var c = new Leases();

        Assert.Null(limit.TryEnter("a", a));
        Assert.Null(limit.TryEnter("a", a));
        Assert.Equal(RefusalReason.ShareUsedUp, limit.TryEnter("a", c));
        c.Dispose();
        Assert.Null(limit.TryEnter("b", b));
        Assert.Equal(RefusalReason.Saturated, limit.TryEnter("c", c));
        a.Dispose();

        Assert.Equal(1, limit.InUse);
        Assert.Null(limit.TryEnter("b", b));
    }

    [Fact]
    public async Task Bodies_being_read_are_bounded_together_and_small_ones_are_still_admitted()
    {
        await using var service = Of((AdmissionSettings.BodiesKey, "1"), (AdmissionSettings.ShareKey, "1"));
        var large = Body + new string(' ', 700_000);
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            var first = service.RecommendAsync(large);
            await Eventually.TrueAsync(() => service.Get<Admissions>().BodyBytes > 700_000);

            Assert.Equal(503, (await service.RecommendAsync(large)).Status);
            Assert.Equal(400, (await service.RecommendAsync(NotJson)).Status);
            Assert.False(first.IsCompleted);
        }

        await Eventually.TrueAsync(() => service.Get<Admissions>().BodyBytes == 0);
    }

    [Fact]
    public async Task Batches_have_a_limit_of_their_own()
    {
        await using var service = Of((AdmissionSettings.BatchesKey, "1"), (AdmissionSettings.RequestsKey, "1"), (AdmissionSettings.ShareKey, "1"));
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            var first = service.PostAsync(Batch.Path, Batch.LineOfItsOwn("1", 1), Batch.MediaType);
            await Eventually.TrueAsync(() => service.Get<Admissions>().InFlight == 1);

            Assert.Equal(503, (await service.PostAsync(Batch.Path, Batch.LineOfItsOwn("2", 2), Batch.MediaType)).Status);
            Assert.Equal(200, await StatusOfAsync(service, "/v1/targets"));
            Assert.False(first.IsCompleted);
        }
    }

    [Fact]
    public async Task A_caller_who_leaves_leaves_no_request_and_no_solve_behind()
    {
        await using var service = Of((AdmissionSettings.RequestsKey, "10"));
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            using var cancellationToken = new CancellationTokenSource();
            var asking = service.RecommendAsync(Body, cancellationToken.Token);
            await Eventually.TrueAsync(() => service.Get<SolveGate>().Waiting == 1);

            await cancellationToken.CancelAsync();

            await Eventually.TrueAsync(() => service.Get<SolveGate>().Waiting == 0 && service.Get<Admissions>().InFlight == 0);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => asking);
        }
    }

    [Fact]
    public async Task A_key_whose_rate_is_used_up_is_refused_before_its_body_is_read()
    {
        var key = new Keyed("shop", "shop") { Rate = 2 };
        await using var service = Keyed.ServiceWith(key);

        List<Answer> answers = [];
        for (var i = 0; i < 3; i++)
        {
            answers.Add(await service.SendAsync(HttpMethod.Post, "/v1/recommendations", NotJson, headers: key.Header));
        }

        Assert.Equal([400, 400, 429], answers.Select(answer => answer.Status));
        Assert.Equal("/problems/rate-used-up", answers[2].Problem.Type);
        Assert.InRange(int.Parse(answers[2].RetryAfter!, System.Globalization.CultureInfo.InvariantCulture), 1, 30);
    }

    [Fact]
    public async Task A_page_of_another_origin_may_read_that_it_is_refused()
    {
        const string origin = "https://shop.example";
        var key = new Keyed("shop", "shop") { Rate = 1, Origins = origin };
        await using var service = Keyed.ServiceWith(key);
        using var client = service.CreateClient();
        client.DefaultRequestHeaders.Authorization = AuthenticationHeaderValue.Parse(key.Header.Value);
        client.DefaultRequestHeaders.Add("Origin", origin);
        using var first = await client.GetAsync(new Uri("/v1/targets", UriKind.Relative));

        using var refused = await client.GetAsync(new Uri("/v1/targets", UriKind.Relative));

        Assert.Equal(429, (int)refused.StatusCode);
        Assert.Equal([origin], refused.Headers.GetValues("Access-Control-Allow-Origin"));
        Assert.NotNull(refused.Headers.RetryAfter);
    }

    [Fact]
    public async Task A_key_that_is_revoked_while_its_requests_are_refused_is_told_that_it_is_not_known()
    {
        var key = new Keyed("shop", "shop") { Rate = 1 };
        await using var service = Keyed.ServiceWith(key, new Keyed("other", "other"));
        await service.SendAsync(HttpMethod.Get, "/v1/targets", headers: key.Header);
        Assert.Equal(429, (await service.SendAsync(HttpMethod.Get, "/v1/targets", headers: key.Header)).Status);

        service.Services.GetRequiredService<KeyRing>().Renew(new KeySet([]));

        Assert.Equal(401, (await service.SendAsync(HttpMethod.Get, "/v1/targets", headers: key.Header)).Status);
    }

    [Fact]
    public async Task Refusals_are_summed_up_in_the_log_now_and_then()
    {
        var log = new RecordingLogger<RefusalReport>();
        var clock = new FakeTimeProvider();
        using var report = new RefusalReport(log, clock);
        await report.StartAsync(CancellationToken.None);
        for (var i = 0; i < 1000; i++)
        {
            report.Add(RefusalReason.Saturated);
        }

        await Eventually.TrueAsync(() =>
        {
            clock.Advance(RefusalReport.Every);
            return !log.Entries.IsEmpty;
        });
        await report.StopAsync(CancellationToken.None);

        Assert.Equal(["Requests were refused at the door: 1000 as saturated."], log.Entries.Select(entry => entry.Message));
    }

    [Theory]
    [InlineData(AdmissionSettings.RequestsKey, "0")]
    [InlineData(AdmissionSettings.BatchesKey, "-1")]
    [InlineData(AdmissionSettings.ShareKey, "0")]
    [InlineData(AdmissionSettings.ShareKey, "1.5")]
    [InlineData(AdmissionSettings.BodiesKey, "0")]
    [InlineData(AdmissionSettings.ConnectionsKey, "0")]
    [InlineData(WorkCharge.Key, "-1")]
    [InlineData(SchedulerSettings.MemoryKey, "0")]
    [InlineData(SchedulerSettings.BackgroundKey, "2")]
    public void Settings_out_of_range_stop_the_start(string key, string value)
    {
        using var service = new Service(null, (key, value));

        var failure = Assert.ThrowsAny<Exception>(() => service.Services);

        Assert.Contains(key, failure.ToString(), StringComparison.Ordinal);
    }

    private static WatchedService Of(params (string Key, string Value)[] settings)
    {
        var service = new WatchedService(null, [.. settings, (CertifySettings.ShareKey, "0")]);
        Assert.True(service.Get<Readiness>().IsReady);
        return service;
    }

    private static async Task<int> StatusOfAsync(WatchedService service, string path)
    {
        using var client = service.CreateClient();
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative));
        return (int)answer.StatusCode;
    }
}
