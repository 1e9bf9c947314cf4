using System.Collections.Concurrent;
using System.Text;
using Evenstep.Benchmarks.Trials;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>The service is told to end (SIGTERM) while many ask.</summary>
public sealed class StopTests
{
    private const int Callers = 8;

    private static readonly TimeSpan Before = TimeSpan.FromSeconds(1);

    private enum Ending
    {
        Answered,
        NotConnected,
        BrokenOff,
    }

    private sealed record Sent(bool BeforeTheSignal, Ending Ending, int Status);

    [Fact]
    public async Task Whatever_was_sent_before_is_answered_and_the_process_ends_well()
    {
        using var service = await TrialService.StartAsync(Trial.Start());
        var sent = new ConcurrentQueue<Sent>();
        using var signalled = new CancellationTokenSource();
        var callers = Enumerable.Range(0, Callers).Select(caller => KeepAskingAsync(service, caller, sent, signalled.Token)).ToArray();
        await Task.Delay(Before);

        service.Terminate();
        await signalled.CancelAsync();
        using var patience = new CancellationTokenSource(Trial.Patience);
        await service.WaitForExitAsync(patience.Token);
        await Task.WhenAll(callers);

        Assert.Equal(0, service.ExitCode);
        var before = sent.Where(one => one.BeforeTheSignal).ToArray();
        Assert.All(before.Where(one => one.Ending == Ending.Answered), one => Assert.Equal(200, one.Status));

        // The port closes at once: of each caller one connection may still have waited to be accepted.
        Assert.InRange(before.Count(one => one.Ending != Ending.Answered), 0, Callers);
        Assert.All(sent, one => Assert.True(one.Ending != Ending.Answered || one.Status is 200 or 503, $"{one}"));
        Assert.InRange(sent.Count(one => one.Ending == Ending.Answered), Callers, int.MaxValue);
    }

    /// <summary>Each request on a connection of its own, so that none is sent into one that is being closed.</summary>
    private static async Task KeepAskingAsync(TrialService service, int caller, ConcurrentQueue<Sent> sent, CancellationToken signalled)
    {
        for (var number = 0; ; number++)
        {
            var isBefore = !signalled.IsCancellationRequested;
            var one = await AskAsync(service, Trial.Small((caller * 1000) + number));
            sent.Enqueue(new Sent(isBefore, one.Ending, one.Status));
            if (one.Ending != Ending.Answered)
            {
                return;
            }
        }
    }

    private static async Task<(Ending Ending, int Status)> AskAsync(TrialService service, string body)
    {
        using var patience = new CancellationTokenSource(Trial.Patience);
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, Trial.Recommend);
            request.Content = new StringContent(body, Encoding.UTF8, "application/json");
            request.Headers.ConnectionClose = true;
            using var response = await service.Client.SendAsync(request, patience.Token);
            await response.Content.ReadAsStringAsync(patience.Token);
            return (Ending.Answered, (int)response.StatusCode);
        }
        catch (HttpRequestException failure)
        {
            return (failure.HttpRequestError == HttpRequestError.ConnectionError ? Ending.NotConnected : Ending.BrokenOff, 0);
        }
    }
}
