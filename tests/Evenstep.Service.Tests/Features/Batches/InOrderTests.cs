using System.Runtime.CompilerServices;
using Evenstep.Service.Features.Batches;
using Evenstep.Service.Tests.Answering.Metrics;

namespace Evenstep.Service.Tests.Features.Batches;

public sealed class InOrderTests
{
    private const int MostAtOnce = 4;

    private readonly List<int> taken = [];
    private int read;

    [Fact]
    public async Task Results_come_in_the_order_of_the_things_whatever_ends_first()
    {
        // Each waits for the one behind it, as far as they are under way together.
        TaskCompletionSource[] ended = [.. Enumerable.Range(0, MostAtOnce).Select(_ => new TaskCompletionSource())];
        var work = new InOrder<int, int>(MostAtOnce, async (thing, _) =>
        {
            await (thing + 1 < MostAtOnce ? ended[thing + 1].Task : Task.CompletedTask);
            ended[thing].SetResult();
            return thing;
        });

        await RunAsync(work, Count(MostAtOnce));

        Assert.Equal(Enumerable.Range(0, MostAtOnce), taken);
    }

    [Fact]
    public async Task No_more_is_read_than_can_be_under_way_while_results_are_not_taken()
    {
        var open = new TaskCompletionSource();
        var work = new InOrder<int, int>(MostAtOnce, (thing, _) => Task.FromResult(thing));

        var running = work.RunAsync(
            Count(1000),
            async result =>
            {
                await open.Task;
                taken.Add(result);
            },
            () => ValueTask.CompletedTask,
            CancellationToken.None);
        await Eventually.TrueAsync(() => Volatile.Read(ref read) > MostAtOnce);
        await Task.Delay(50);

        // The one more is read, and not begun.
        Assert.Equal(MostAtOnce + 1, Volatile.Read(ref read));
        open.SetResult();
        await running;
        Assert.Equal(Enumerable.Range(0, 1000), taken);
    }

    [Fact]
    public async Task It_pauses_before_it_waits_for_a_result_and_before_it_waits_for_a_thing()
    {
        var open = new TaskCompletionSource();
        var paused = 0;
        var work = new InOrder<int, int>(MostAtOnce, async (thing, _) =>
        {
            await open.Task;
            return thing;
        });

        await work.RunAsync(
            Count(1),
            Take,
            () =>
            {
                paused++;
                open.TrySetResult();
                return ValueTask.CompletedTask;
            },
            CancellationToken.None);

        Assert.InRange(paused, 2, 3);
        Assert.Equal([0], taken);
    }

    [Fact]
    public async Task What_came_before_a_failure_of_the_source_is_given()
    {
        var work = new InOrder<int, int>(MostAtOnce, (thing, _) => Task.FromResult(thing));

        await Assert.ThrowsAsync<InvalidDataException>(() => RunAsync(work, CountThenFail(10)));

        Assert.Equal(Enumerable.Range(0, 10), taken);
    }

    [Fact]
    public async Task Nothing_goes_on_when_results_are_not_wanted_any_more()
    {
        using var cancellationToken = new CancellationTokenSource();
        var underWay = 0;
        var work = new InOrder<int, int>(MostAtOnce, async (thing, end) =>
        {
            Interlocked.Increment(ref underWay);
            try
            {
                await Task.Delay(Timeout.Infinite, end);
            }
            finally
            {
                Interlocked.Decrement(ref underWay);
            }

            return thing;
        });

        var running = RunAsync(work, Count(1000), cancellationToken.Token);
        await Eventually.TrueAsync(() => Volatile.Read(ref underWay) == MostAtOnce);
        await cancellationToken.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => running);
        Assert.Equal(0, underWay);
        Assert.InRange(read, MostAtOnce, MostAtOnce + 1);
    }

    private Task RunAsync(InOrder<int, int> work, IAsyncEnumerable<int> things, CancellationToken cancellationToken = default) =>
        work.RunAsync(things, Take, () => ValueTask.CompletedTask, cancellationToken);

    private ValueTask Take(int result)
    {
        taken.Add(result);
        return ValueTask.CompletedTask;
    }

    private async IAsyncEnumerable<int> Count(int most, [EnumeratorCancellation] CancellationToken cancellationToken = default)
    {
        for (var i = 0; i < most; i++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            Interlocked.Increment(ref read);
            yield return i;
        }

        await Task.CompletedTask;
    }

    private async IAsyncEnumerable<int> CountThenFail(int most)
    {
        await foreach (var i in Count(most))
        {
            yield return i;
        }

        throw new InvalidDataException("A test fails.");
    }
}
