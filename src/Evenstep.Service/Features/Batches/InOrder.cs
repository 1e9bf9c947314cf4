using System.Threading.Channels;

namespace Evenstep.Service.Features.Batches;

/// <summary>Works on several things at once, but only on so many, and gives the results in the order in which the things came.</summary>
/// <param name="mostAtOnce">The most things that are worked on, or whose results have not been taken yet.</param>
/// <param name="work">Works on one. Its token is cancelled when the result is not wanted any more.</param>
internal sealed class InOrder<T, TResult>(int mostAtOnce, Func<T, CancellationToken, Task<TResult>> work)
{
    /// <summary>Runs to the end of the things, or until nobody wants the results.</summary>
    /// <param name="things">Read no faster than results are taken.</param>
    /// <param name="take">Takes a result.</param>
    /// <param name="pause">Called whenever the next result is yet to come.</param>
    /// <param name="cancellationToken">Nobody wants the results any more.</param>
    public async Task RunAsync(IAsyncEnumerable<T> things, Func<TResult, ValueTask> take, Func<ValueTask> pause, CancellationToken cancellationToken)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        using var free = new SemaphoreSlim(mostAtOnce);
        var begun = Channel.CreateUnbounded<Task<TResult>>(new UnboundedChannelOptions { SingleReader = true, SingleWriter = true });
        var beginning = BeginAllAsync(things, begun.Writer, free, end.Token);
        try
        {
            await TakeAllAsync(begun.Reader, take, pause, free, end.Token);
        }
        finally
        {
            await end.CancelAsync();
            await beginning;
            await EndAllAsync(begun.Reader);
        }
    }

    private async Task BeginAllAsync(IAsyncEnumerable<T> things, ChannelWriter<Task<TResult>> begun, SemaphoreSlim free, CancellationToken end)
    {
        try
        {
            await foreach (var thing in things.WithCancellation(end))
            {
                await free.WaitAsync(end);
                begun.TryWrite(Task.Run(() => work(thing, end), end));
            }

            begun.Complete();
        }
#pragma warning disable CA1031 // Whoever takes the results is told, after those that were begun before.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            begun.Complete(exception);
        }
    }

    private static async Task TakeAllAsync(
        ChannelReader<Task<TResult>> begun, Func<TResult, ValueTask> take, Func<ValueTask> pause, SemaphoreSlim free, CancellationToken end)
    {
        while (true)
        {
            if (!begun.TryPeek(out var next))
            {
                await pause();
                if (!await begun.WaitToReadAsync(end))
                {
                    return;
                }

                continue;
            }

            if (!next.IsCompleted)
            {
                await pause();
            }

            await take(await next);
            begun.TryRead(out _);
            free.Release();
        }
    }

    /// <summary>Nothing goes on behind the back of whoever waits for the end.</summary>
    private static async Task EndAllAsync(ChannelReader<Task<TResult>> begun)
    {
        while (begun.TryRead(out var left))
        {
            await ((Task)left).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}
