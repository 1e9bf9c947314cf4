using System.Buffers;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Admission;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Tests.Answering.Metrics;

namespace Evenstep.Service.Tests.Answering.Caching;

public sealed class CacheTests
{
    private static readonly string Body = Repository.Example("recommendation-spectacles");

    [Fact]
    public async Task An_equal_request_is_given_the_same_answer_without_a_solve()
    {
        await using var service = new WatchedService();

        var first = await service.RecommendAsync(Body);
        var second = await service.RecommendAsync(Body);
        await service.RecommendAsync(Body + " ");

        Assert.Equal(first, second);
        Assert.Equal((200, "application/json"), (second.Status, second.ContentType));
        Assert.Equal(2, service.Solves);
        Assert.Equal((1, 2), (service.CountOf(ServiceMeter.Lookups, "hit"), service.CountOf(ServiceMeter.Lookups, "miss")));
        Assert.Equal(3, service.CountOf(ServiceMeter.Answers, "optimal"));
    }

    [Fact]
    public async Task Two_hundred_equal_requests_at_once_are_solved_once()
    {
        await using var service = new WatchedService(null, (AdmissionSettings.RequestsKey, "1000"));
        List<Task<Answer>> asked;
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            asked = [.. Enumerable.Range(0, 200).Select(_ => service.RecommendAsync(Body))];
            await Eventually.TrueAsync(() => service.Get<SolveGate>().Waiting == 1);
        }

        var answers = await Task.WhenAll(asked);

        Assert.Equal(1, service.Solves);
        Assert.Equal(200, answers[0].Status);
        Assert.Single(answers.Distinct());
    }

    [Fact]
    public async Task A_caller_who_leaves_takes_nothing_from_the_others()
    {
        await using var service = new WatchedService();
        using var leaving = new CancellationTokenSource();
        Task<Answer> first, second, third;
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            first = service.RecommendAsync(Body, leaving.Token);
            await Eventually.TrueAsync(() => service.Get<SolveGate>().Waiting == 1);
            second = service.RecommendAsync(Body);
            third = service.RecommendAsync(Body);
            await Task.Delay(200);
            await leaving.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
        }

        Assert.Equal((200, 200), ((await second).Status, (await third).Status));
        Assert.Equal(1, service.Solves);
    }

    [Fact]
    public async Task A_solve_that_nobody_waits_for_any_more_ends()
    {
        await using var service = new WatchedService();
        using var leaving = new CancellationTokenSource();
        await using (await FullGate.OfAsync(service.Get<SolveGate>()))
        {
            var only = service.RecommendAsync(Body, leaving.Token);
            await Eventually.TrueAsync(() => service.Get<SolveGate>().Waiting == 1);
            await leaving.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => only);
            await Eventually.TrueAsync(() => service.Get<SolveGate>().Waiting == 0);
        }

        Assert.Equal(200, (await service.RecommendAsync(Body)).Status);
        Assert.Equal(1, service.Solves);
    }

    [Fact]
    public async Task Errors_are_not_kept()
    {
        await using var service = new WatchedService();

        Assert.Equal(400, (await service.RecommendAsync("{}")).Status);
        Assert.Equal(400, (await service.RecommendAsync("{}")).Status);

        Assert.Equal(0, service.CountOf(ServiceMeter.Lookups, "hit"));
    }

    [Fact]
    public async Task A_failed_solve_is_tried_again()
    {
        await using var service = new WatchedService();
        var cache = service.Get<AnswerCache>();

        await Assert.ThrowsAsync<InvalidOperationException>(
            () => cache.GetOrMakeAsync("key", _ => throw new InvalidOperationException("A test fails."), CancellationToken.None));

        Assert.True((await cache.GetOrMakeAsync("key", _ => Task.FromResult(AnswerOf(10)), CancellationToken.None)).IsNew);
    }

    [Theory]
    [InlineData(Outcome.Optimal, true)]
    [InlineData(Outcome.NothingWorthwhile, true)]
    [InlineData(Outcome.Infeasible, true)]
    [InlineData(Outcome.BestFound, false)]
    public async Task Only_what_is_proved_is_kept(Outcome outcome, bool kept)
    {
        await using var service = new WatchedService();
        var cache = service.Get<AnswerCache>();

        await cache.GetOrMakeAsync("key", _ => Task.FromResult(AnswerOf(10, outcome)), CancellationToken.None);

        Assert.Equal(kept, await cache.FindAsync("key", CancellationToken.None) is not null);
    }

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(1, 1, 3)]
    [InlineData(64, 20, 20)]
    public async Task No_more_is_kept_than_memory_is_set_aside_for(int megabytes, int least, int most)
    {
        await using var service = new WatchedService(null, (CachingSetup.MegabytesKey, $"{megabytes}"));
        var cache = service.Get<AnswerCache>();
        string[] keys = [.. Enumerable.Range(0, 20).Select(i => $"key {i}")];
        foreach (var key in keys)
        {
            await cache.GetOrMakeAsync(key, _ => Task.FromResult(AnswerOf(300 * 1024)), CancellationToken.None);
        }

        var kept = 0;
        foreach (var key in keys)
        {
            kept += await cache.FindAsync(key, CancellationToken.None) is null ? 0 : 1;
        }

        Assert.InRange(kept, least, most);
    }

    private static FinishedAnswer AnswerOf(int bytes, Outcome outcome = Outcome.Optimal) =>
        new()
        {
            Body = new ReadOnlySequence<byte>(new byte[bytes]), Representation = new Representation(AnswerFormat.Json, Language.English), Outcome = outcome,
            Took = TimeSpan.Zero
        };
}
