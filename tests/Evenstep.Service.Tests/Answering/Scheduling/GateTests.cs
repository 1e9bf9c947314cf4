using Evenstep.Planning.Budgets;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Tests.Answering.Metrics;
using Microsoft.Extensions.Time.Testing;

namespace Evenstep.Service.Tests.Answering.Scheduling;

/// <summary>Solves on threads, with one slot and a clock that is told the time.</summary>
public sealed class GateTests : IDisposable
{
    private readonly FakeTimeProvider clock = new();
    private readonly SolveGate gate;

    public GateTests() => gate = new SolveGate(1, SchedulerSettings.Usual, clock);

    public void Dispose() => gate.Dispose();

    [Fact]
    public async Task A_solve_runs_on_a_thread_that_no_request_needs() =>
        Assert.False(await gate.RunAsync(_ => Thread.CurrentThread.IsThreadPoolThread, CancellationToken.None));

    [Fact]
    public async Task A_thread_is_used_again()
    {
        var last = 0;

        // The next solve may come before the thread is idle.
        await Eventually.TrueAsync(async () => last == (last = await gate.RunAsync(_ => Environment.CurrentManagedThreadId, CancellationToken.None)));
    }

    [Fact]
    public async Task The_exception_of_a_solve_reaches_its_caller_and_the_slot_is_free()
    {
        var failure = await Assert.ThrowsAsync<InvalidDataException>(
            () => gate.RunAsync<int>(_ => throw new InvalidDataException("A test fails."), CancellationToken.None));

        Assert.Equal("A test fails.", failure.Message);
        Assert.Equal(0, gate.InUse);
    }

    [Fact]
    public async Task A_long_solve_yields_to_a_small_one_and_goes_on_with_what_it_had()
    {
        using var end = new CancellationTokenSource();
        var steps = 0;
        var curve = gate.RunAsync(slot => CountUntil(slot, ref steps, end.Token), CancellationToken.None);
        await Eventually.TrueAsync(() => Volatile.Read(ref steps) > 0);

        for (var i = 0; i < 3; i++)
        {
            var small = gate.RunAsync(_ => "small", CancellationToken.None);
            await Eventually.TrueAsync(() => Advance(() => small.IsCompleted));
        }

        await end.CancelAsync();
        Assert.Equal(Volatile.Read(ref steps), await curve);
    }

    [Fact]
    public async Task Twenty_long_solves_are_all_under_way_and_small_ones_are_answered_between_them()
    {
        using var end = new CancellationTokenSource();
        var steps = new int[20];
        var curves = Enumerable.Range(0, 20).Select(i => gate.RunAsync(slot => CountUntil(slot, ref steps[i], end.Token), CancellationToken.None)).ToList();
        await Eventually.TrueAsync(() => Advance(() => steps.All(one => one > 0)));

        var small = gate.RunAsync(_ => "small", CancellationToken.None);
        await Eventually.TrueAsync(() => Advance(() => small.IsCompleted));

        Assert.Equal((1, 19), (gate.InUse, gate.Waiting));
        await end.CancelAsync();
        await Task.WhenAll(curves);
        Assert.Equal((0, 0), (gate.InUse, gate.Waiting));
    }

    [Fact]
    public async Task A_cancelled_request_ends_its_running_solve_at_the_next_checkpoint()
    {
        using var cancellationToken = new CancellationTokenSource();
        var steps = 0;
        var solve = gate.RunAsync(slot => CountUntil(slot, ref steps, CancellationToken.None), cancellationToken.Token);
        await Eventually.TrueAsync(() => Volatile.Read(ref steps) > 0);

        await cancellationToken.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => solve);
        Assert.Equal(0, gate.InUse);
    }

    [Fact]
    public async Task A_request_cancelled_in_the_queue_is_counted_no_more_and_its_solve_never_begins()
    {
        using var cancellationToken = new CancellationTokenSource();
        using var open = new ManualResetEventSlim();
        var busy = gate.RunAsync(_ => { open.Wait(); return 0; }, CancellationToken.None);
        var hasBegun = false;
        var waiting = gate.RunAsync(_ => hasBegun = true, cancellationToken.Token);
        Assert.Equal(1, gate.Waiting);

        await cancellationToken.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
        Assert.Equal(0, gate.Waiting);
        open.Set();
        await busy;
        Assert.False(hasBegun);
    }

    [Fact]
    public async Task A_request_cancelled_while_its_solve_has_yielded_ends_it_without_a_slot()
    {
        using var cancellationToken = new CancellationTokenSource();
        using var open = new ManualResetEventSlim();
        var steps = 0;
        var yielding = gate.RunAsync(slot => CountUntil(slot, ref steps, CancellationToken.None), cancellationToken.Token);
        await Eventually.TrueAsync(() => Volatile.Read(ref steps) > 0);
        clock.Advance(TimeSpan.FromSeconds(1));
        var small = gate.RunAsync(_ => { open.Wait(); return 0; }, CancellationToken.None);
        await Eventually.TrueAsync(() => gate is { InUse: 1, Waiting: 1 } && !small.IsCompleted);

        await cancellationToken.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => yielding);
        Assert.Equal((1, 0), (gate.InUse, gate.Waiting));
        open.Set();
        await small;
    }

    [Fact]
    public async Task A_request_cancelled_beforehand_begins_nothing()
    {
        var solve = gate.RunAsync(_ => 1, new CancellationToken(canceled: true));

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => solve);
        Assert.Equal(0, gate.InUse);
    }

    [Fact]
    public async Task The_work_and_the_memory_of_a_solve_are_measured()
    {
        var claim = new SolveClaim("a", SolvePriority.Single);
        await gate.RunAsync(
            slot =>
            {
                var budget = slot.Budget(WorkLimits.Usual);
                Assert.True(budget.TryHold(1000));
                budget.SpendUnits(0.25);
                return 0;
            },
            claim,
            CancellationToken.None);

        Assert.Equal(0.25, claim.UnitsSpent, 6);
        Assert.Equal(0, gate.HeldBytes);
    }

    /// <summary>Counts, with a checkpoint at every step, until it is told to end.</summary>
    private static int CountUntil(SolveSlot slot, ref int steps, CancellationToken end)
    {
        while (!end.IsCancellationRequested)
        {
            Interlocked.Increment(ref steps);
            slot.Checkpoint();
            slot.CancellationToken.ThrowIfCancellationRequested();
            Thread.Yield();
        }

        return Volatile.Read(ref steps);
    }

    private bool Advance(Func<bool> isDone)
    {
        clock.Advance(TimeSpan.FromMilliseconds(5));
        return isDone();
    }
}
