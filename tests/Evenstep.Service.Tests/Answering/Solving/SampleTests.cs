using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Features.Batches;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Evenstep.Service.Tests.Answering.Solving;

public sealed class SampleTests
{
    private static readonly string Body = Repository.Example("recommendation-spectacles");
    private static readonly (string, string) All = (CertifySettings.ShareKey, "1");

    [Fact]
    public async Task A_share_of_the_answers_is_certified_in_the_background()
    {
        await using var service = new WatchedService(null, (CertifySettings.ShareKey, "0.5"));

        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(200, (await service.RecommendAsync(Body + new string(' ', i))).Status);
        }

        await Eventually.TrueAsync(() => service.CountOf(ServiceMeter.Certificates, "agreed") == 2);
    }

    [Fact]
    public async Task Nothing_is_certified_with_a_share_of_nought()
    {
        var asked = 0;
        await using var service = new WatchedService(Proving(_ => { asked++; return true; }), (CertifySettings.ShareKey, "0"));

        await service.RecommendAsync(Body);
        await Task.Delay(200);

        Assert.Equal(0, asked);
    }

    [Fact]
    public async Task What_a_batch_asks_is_not_certified_unasked()
    {
        var asked = 0;
        await using var service = new WatchedService(Proving(_ => { Interlocked.Increment(ref asked); return true; }), All);

        await service.PostAsync(Batch.Path, string.Join('\n', Enumerable.Range(0, 5).Select(i => Batch.LineOfItsOwn($"{i}", i))), Batch.MediaType);
        await service.RecommendAsync(Body);

        // Samples are certified one after another: had there been others, they would have gone before.
        await Eventually.TrueAsync(() => service.CountOf(ServiceMeter.Certificates, "agreed") > 0);
        Assert.Equal(1, Volatile.Read(ref asked));
    }

    [Fact]
    public async Task A_disagreement_is_logged_and_counted_and_the_next_sample_is_certified()
    {
        var log = new RecordingLogger<Certificates>();
        await using var service = new WatchedService(
            services =>
            {
                Proving(_ => false)(services);
                services.AddSingleton<ILogger<Certificates>>(log);
            },
            All);

        await service.RecommendAsync(Body);
        await service.RecommendAsync(Body + " ");

        await Eventually.TrueAsync(() => service.CountOf(ServiceMeter.Certificates, "disagreed") == 2);
        Assert.Contains(log.Entries, entry => entry.Level == LogLevel.Error && entry.Message.Contains(Body, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_failure_is_undecided_and_the_next_sample_is_certified()
    {
        await using var service = new WatchedService(Proving(_ => throw new InvalidOperationException("A test fails.")), All);

        await service.RecommendAsync(Body);
        await service.RecommendAsync(Body + " ");

        await Eventually.TrueAsync(() => service.CountOf(ServiceMeter.Certificates, "undecided") == 2);
    }

    [Fact]
    public async Task A_certificate_stands_still_while_a_request_is_solved_and_is_finished_afterwards()
    {
        var looks = 0;
        using var mayEnd = new ManualResetEventSlim();
        await using var service = new WatchedService(
            services => services.AddSingleton<SecondProver>((_, _, budget) =>
            {
                while (!mayEnd.IsSet)
                {
                    Interlocked.Increment(ref looks);
                    budget.Look();
                    Thread.Yield();
                }

                return true;
            }),
            All);
        var gate = service.Get<SolveGate>();
        await service.RecommendAsync(Body);
        await Eventually.TrueAsync(() => Volatile.Read(ref looks) > 0);
        await using (await FullGate.OfAsync(gate))
        {
            await Eventually.TrueAsync(() => gate is { Waiting: 1 } && gate.InUse == Environment.ProcessorCount);
            var before = Volatile.Read(ref looks);
            Assert.Equal(200, (await service.RecommendAsync(Body)).Status);
            Assert.Equal(before, Volatile.Read(ref looks));
        }

        await Eventually.TrueAsync(() => gate.InUse == 1);
        mayEnd.Set();
        await Eventually.TrueAsync(() => service.CountOf(ServiceMeter.Certificates, "agreed") == 1);
    }

    [Fact]
    public async Task What_does_not_fit_into_the_queue_is_dropped_and_counted()
    {
        await using var service = new WatchedService(Proving(WaitUntilCancelled), All);

        for (var i = 0; i < SampleQueue.MostWaiting + 3; i++)
        {
            Assert.Equal(200, (await service.RecommendAsync(Body + new string(' ', i))).Status);
        }

        Assert.InRange(service.CountOf(ServiceMeter.Certificates, "dropped"), 2, 3);
    }

    [Fact]
    public async Task A_certificate_does_not_hold_up_the_end_of_the_service()
    {
        var ended = new TaskCompletionSource();
        var service = new WatchedService(
            Proving(leave =>
            {
                leave.WaitHandle.WaitOne();
                ended.SetResult();
                throw new OperationCanceledException(leave);
            }),
            All);
        await service.RecommendAsync(Body);
        await Eventually.TrueAsync(() => service.Get<SolveGate>().InUse == 1);

        await service.DisposeAsync();

        Assert.True(ended.Task.IsCompleted);
    }

    private static Action<IServiceCollection> Proving(Func<CancellationToken, bool?> prove) =>
        services => services.AddSingleton<SecondProver>((_, _, budget) => prove(budget.CancellationToken));

    private static bool? WaitUntilCancelled(CancellationToken leave)
    {
        leave.WaitHandle.WaitOne();
        throw new OperationCanceledException(leave);
    }
}
