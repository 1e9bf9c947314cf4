using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Answering.Scheduling;

/// <summary>Where all solves go through: only as many run at once as there are processors, each on a thread of its own.</summary>
internal sealed class SolveGate : IDisposable
{
    private readonly SolveThreads threads = new();
    private readonly SolveScheduler scheduler;

    public SolveGate(SchedulerSettings settings, AnswersBeingSent answers)
        : this(Environment.ProcessorCount, settings, TimeProvider.System, answers)
    {
    }

    /// <summary>With a number of slots and a clock of its own.</summary>
    internal SolveGate(int slots, SchedulerSettings settings, TimeProvider clock, AnswersBeingSent? answers = null) =>
        scheduler = new SolveScheduler(slots, settings, clock, answers);

    /// <summary>How many solves run.</summary>
    public int InUse => scheduler.Running;

    /// <summary>How many solves wait, to begin or to go on.</summary>
    public int Waiting => scheduler.Waiting;

    /// <summary>The memory that the solves hold, in bytes.</summary>
    public long HeldBytes => scheduler.HeldBytes;

    /// <summary>Runs a solve of the request at hand (<see cref="SolveClaim.Current"/>).</summary>
    public Task<T> RunAsync<T>(Func<SolveSlot, T> solve, CancellationToken cancellationToken) => RunAsync(solve, SolveClaim.Current, cancellationToken);

    /// <summary>Runs a solve when its turn comes.</summary>
    /// <param name="solve">The solve; it takes its budget from the slot that it is given.</param>
    /// <param name="claim">For whom it is.</param>
    /// <param name="cancellationToken">Nobody waits any more: ends it at its next checkpoint, or before it begins.</param>
    public Task<T> RunAsync<T>(Func<SolveSlot, T> solve, SolveClaim claim, CancellationToken cancellationToken)
    {
        if (cancellationToken.IsCancellationRequested)
        {
            return Task.FromCanceled<T>(cancellationToken);
        }

        var result = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        var slot = new SolveSlot(scheduler, claim, own => threads.Run(() => Run(solve, own, result)), cancellationToken);
        scheduler.Add(slot.Solve);
        if (cancellationToken.CanBeCanceled && !slot.Solve.HasBegun)
        {
            WithdrawWhenCancelled(slot, result);
        }

        return result.Task;
    }

    public void Dispose() => scheduler.Dispose();

    private void WithdrawWhenCancelled<T>(SolveSlot slot, TaskCompletionSource<T> result)
    {
        var registration = slot.CancellationToken.UnsafeRegister(
            _ =>
            {
                if (scheduler.TryWithdraw(slot.Solve))
                {
                    result.TrySetCanceled(slot.CancellationToken);
                }
            },
            null);
        result.Task.ContinueWith(_ => registration.Unregister(), CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
    }

    private static void Run<T>(Func<SolveSlot, T> solve, SolveSlot slot, TaskCompletionSource<T> result)
    {
        var outcome = OutcomeOf(solve, slot);
        slot.End();
        result.SetFromTask(outcome);
    }

    /// <summary>Whatever comes of a solve, its slot is given back before anybody hears of it.</summary>
    private static Task<T> OutcomeOf<T>(Func<SolveSlot, T> solve, SolveSlot slot)
    {
        try
        {
            slot.CancellationToken.ThrowIfCancellationRequested();
            return Task.FromResult(solve(slot));
        }
        catch (OperationCanceledException cancelled) when (slot.CancellationToken.IsCancellationRequested)
        {
            return Task.FromCanceled<T>(cancelled.CancellationToken.IsCancellationRequested ? cancelled.CancellationToken : slot.CancellationToken);
        }
#pragma warning disable CA1031 // Whoever waits for the solve is told.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            return Task.FromException<T>(exception);
        }
    }
}
