using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Answering.Scheduling;

/// <summary>
/// Decides which solves run: a multilevel feedback queue. At most as many run as there are slots; each asks at its
/// checkpoints whether it must yield. Priorities go one after another, within a priority the levels, within a level the
/// callers, the least served first. Whoever is passed over by all this still gets a share. It decides only: it starts no
/// thread and blocks none.
/// </summary>
internal sealed class SolveScheduler : IDisposable
{
    /// <summary>The share of the time that goes to those whom others would keep waiting for ever.</summary>
    private const double OwedShare = 0.1;

    private readonly Lock changing = new();
    private readonly CallerShares shares = new();
    private readonly WaitingSolves waiting;
    private readonly RunningSolves running;
    private readonly SolvesMemory memory;
    private readonly ProcessorAllowance background;
    private readonly TimeProvider clock;
    private readonly ITimer timer;
    private readonly int slots;
    private TimeSpan owed;
    private long number;

    /// <param name="slots">How many solves may run at once.</param>
    /// <param name="settings">What they may take together.</param>
    /// <param name="clock">Times what they take. It decides who runs, and never what comes of it.</param>
    /// <param name="answers">Those that are being sent, which take of the same memory; null where none are.</param>
    public SolveScheduler(int slots, SchedulerSettings settings, TimeProvider clock, AnswersBeingSent? answers = null)
    {
        this.slots = slots;
        this.clock = clock;
        memory = new SolvesMemory(settings, answers ?? new AnswersBeingSent());
        waiting = new WaitingSolves(slots, memory);
        running = new RunningSolves(slots, clock);
        background = new ProcessorAllowance(settings.BackgroundShare, clock);
        timer = clock.CreateTimer(_ => Change(Dispatch), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>How many solves have a slot, one in the background included.</summary>
    public int Running => Read(() => running.Count);

    /// <summary>How many solves wait for a slot, to begin or to go on.</summary>
    public int Waiting => Read(() => waiting.Count);

    /// <summary>The memory that all solves under way hold, in bytes, but for one in the background.</summary>
    public long HeldBytes => Read(() => memory.Held);

    /// <summary>Takes in a solve. It is begun when its turn comes, which may be at once.</summary>
    public void Add(ScheduledSolve solve) => Change(() =>
    {
        solve.Number = number++;
        solve.Share = shares.Enter(solve.Claim);
        Wait(solve);
        Dispatch();
    });

    /// <summary>Takes back a solve that has not begun. False if it has.</summary>
    public bool TryWithdraw(ScheduledSolve solve)
    {
        lock (changing)
        {
            if (solve.HasBegun || !waiting.Contains(solve))
            {
                return false;
            }

            Leave(solve);
            return true;
        }
    }

    /// <summary>Asked by a solve at a checkpoint.</summary>
    /// <param name="solve">The solve, which has a slot.</param>
    /// <param name="held">The memory it holds, in bytes.</param>
    /// <returns>Whether its slot is given to others: it must then wait until it is granted one.</returns>
    public bool MustYield(ScheduledSolve solve, long held)
    {
        lock (changing)
        {
            Charge(solve);
            solve.Held = held;
            if (!ShouldYield(solve))
            {
                return false;
            }

            running.Remove(solve);
            Wait(solve);
            Dispatch();
            return true;
        }
    }

    /// <summary>Told when a solve that has begun is over, in whatever way, running or not.</summary>
    public void End(ScheduledSolve solve) => Change(() =>
    {
        if (solve.IsRunning)
        {
            Charge(solve);
        }

        Leave(solve);
        Dispatch();
    });

    public void Dispose() => timer.Dispose();

    private void Change(Action change)
    {
        lock (changing)
        {
            change();
        }
    }

    private T Read<T>(Func<T> read)
    {
        lock (changing)
        {
            return read();
        }
    }

    private void Wait(ScheduledSolve solve)
    {
        solve.IsRunning = false;
        solve.Since = clock.GetTimestamp();

        // Of the longest ones of a caller the first goes on to its end: taking turns would only hold up all of them.
        solve.Turn = solve.Level == SolveLevels.Last ? solve.Number : number++;
        waiting.Add(solve);
    }

    private void Leave(ScheduledSolve solve)
    {
        waiting.Remove(solve);
        running.Remove(solve);
        memory.Leave(solve);
        solve.IsRunning = false;
        solve.Share!.Begun -= solve.HasBegun ? 1 : 0;
        shares.Leave(solve.Claim);
    }

    private void Grant(ScheduledSolve solve)
    {
        waiting.Remove(solve);
        running.Add(solve);
        solve.IsRunning = true;
        solve.Since = clock.GetTimestamp();
        solve.InSlice = TimeSpan.Zero;
        if (!solve.HasBegun)
        {
            solve.HasBegun = true;
            solve.Share!.Begun++;
            memory.Enter(solve);
        }

        solve.Grant();
    }

    private void Charge(ScheduledSolve solve)
    {
        var now = clock.GetTimestamp();
        var ran = clock.GetElapsedTime(solve.Since, now);
        solve.Since = now;
        if (solve.IsBackground)
        {
            // It stays at its level: there is no other in the background that could go before it.
            background.Take(ran);
            return;
        }

        if (!solve.IsOwed && waiting.PassedOver(solve.Rank) is not null)
        {
            owed += ran * OwedShare;
            owed = owed < SolveLevels.Slice ? owed : SolveLevels.Slice;
        }

        solve.InSlice += ran;
        solve.Claim.Ran += ran;
        solve.Share!.Ran += ran;
    }

    private bool ShouldYield(ScheduledSolve solve)
    {
        if (solve.IsBackground)
        {
            return background.IsEmpty || running.SlotsTakenFrom(int.MaxValue) >= slots;
        }

        if (solve.IsOwed && solve.InSlice < SolveLevels.Slice && memory.HasRoomFor(solve))
        {
            return false;
        }

        solve.IsOwed = false;
        return running.SlotsTakenFrom(solve.Rank) > slots
            || !memory.HasRoomFor(solve)
            || (owed >= SolveLevels.Slice && waiting.PassedOver(solve.Rank) is not null)
            || (waiting.Best() is { } best && best.TakesSlotOf(solve));
    }

    private void Dispatch()
    {
        while (Next() is { } next)
        {
            Grant(next);
        }

        SetTimer();
    }

    /// <summary>Who gets a slot now; null if there is none, or nobody for it.</summary>
    private ScheduledSolve? Next()
    {
        if (waiting.Best() is not { } best)
        {
            return running.SlotsTakenFrom(int.MaxValue) < slots && background.TimeUntil(SolveLevels.Slice) == TimeSpan.Zero
                ? waiting.Background : null;
        }

        if (running.SlotsTakenFrom(best.Rank) >= slots)
        {
            return null;
        }

        if (owed < SolveLevels.Slice || waiting.PassedOver(best.Rank) is not { } passedOver)
        {
            return best;
        }

        owed -= SolveLevels.Slice;
        passedOver.IsOwed = true;
        return passedOver;
    }

    /// <summary>Looks again while somebody waits: a solve may have become silent, and the allowance of the background may be full again.</summary>
    private void SetTimer()
    {
        var due = waiting.Count == 0 ? null
            : waiting.HasForeground ? RunningSolves.Silence
            : running.SlotsTakenFrom(int.MaxValue) >= slots ? null
            : background.TimeUntil(SolveLevels.Slice);
        timer.Change(due is { } time ? time + TimeSpan.FromMilliseconds(1) : Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }
}
