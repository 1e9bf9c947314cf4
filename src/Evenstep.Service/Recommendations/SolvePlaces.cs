namespace Evenstep.Service.Recommendations;

/// <summary>
/// The places of the gate, and who gets the next one. Single requests go first. Batches hold all places but one to the end
/// of a solve, and what is left over on sufferance, so that a single request always finds a place; and when single requests
/// come in an endless stream, a batch still gets on.
/// </summary>
/// <param name="count">How many places there are.</param>
/// <param name="patience">How much waiting is put up with.</param>
/// <param name="clock">Tells how long somebody has waited.</param>
internal sealed class SolvePlaces(int count, Patience patience, TimeProvider clock)
{
    /// <summary>So many single requests may go before a batch that waits.</summary>
    public const int MostSinglesInARow = 8;

    private static readonly TimeSpan LeastRetryAfter = TimeSpan.FromSeconds(1);

    private readonly Lock changing = new();
    private readonly LinkedList<Waiter> singles = [];
    private readonly LinkedList<Waiter> batches = [];
    private readonly List<SolveStay> stays = [];
    private int singlesInARow;

    public int InUse
    {
        get
        {
            lock (changing)
            {
                return stays.Count;
            }
        }
    }

    public int Waiting
    {
        get
        {
            lock (changing)
            {
                return singles.Count + batches.Count;
            }
        }
    }

    /// <summary>With a single processor a batch has its only place: a single request then waits for one solve.</summary>
    private bool BatchMayStay => stays.Count(stay => stay.Tenure == Tenure.Batch) < Math.Max(1, count - 1);

    /// <summary>Waits for a place.</summary>
    /// <param name="lane">Who wants it.</param>
    /// <param name="mayLodge">Whether, in a batch, one that may have to be left early will do.</param>
    /// <param name="gone">Waits no more.</param>
    /// <exception cref="SaturatedException">Too many single requests wait already, or this one has waited too long.</exception>
    public Task<SolveStay> TakeAsync(Lane lane, bool mayLodge, CancellationToken gone)
    {
        gone.ThrowIfCancellationRequested();
        var waiter = new Waiter(mayLodge, clock.GetTimestamp());
        var queue = lane == Lane.Single ? singles : batches;
        lock (changing)
        {
            queue.AddLast(waiter);
            Settle();
            if (!waiter.Task.IsCompleted && lane == Lane.Single && singles.Count > patience.MostWaiting)
            {
                singles.Remove(waiter);
                throw new SaturatedException(RetryAfter());
            }
        }

        return waiter.Task.IsCompleted ? waiter.Task : WaitAsync(queue, waiter, gone);
    }

    private async Task<SolveStay> WaitAsync(LinkedList<Waiter> queue, Waiter waiter, CancellationToken gone)
    {
        using var tooLong = new CancellationTokenSource(queue == singles ? patience.LongestWait : Timeout.InfiniteTimeSpan, clock);
        await using var late = tooLong.Token.Register(() => Abandon(queue, waiter, () => waiter.SetException(new SaturatedException(RetryAfter()))));
        await using var leaving = gone.Register(() => Abandon(queue, waiter, () => waiter.SetCanceled(gone)));
        return await waiter.Task;
    }

    /// <summary>Whoever waits longest tells how long the queue is.</summary>
    private TimeSpan RetryAfter()
    {
        var waited = singles.First is { } first ? clock.GetElapsedTime(first.Value.Since) : patience.LongestWait;
        return waited > LeastRetryAfter ? waited : LeastRetryAfter;
    }

    /// <summary>A place for work that nobody waits for; null unless one is free.</summary>
    public SolveStay? TryTakeAside()
    {
        lock (changing)
        {
            return stays.Count < count ? Add(Tenure.Aside) : null;
        }
    }

    /// <summary>Gives a place back.</summary>
    public void Free(SolveStay stay)
    {
        lock (changing)
        {
            stays.Remove(stay);
            Settle();
        }
    }

    /// <summary>Unless it has just got a place.</summary>
    private void Abandon(LinkedList<Waiter> queue, Waiter waiter, Action end)
    {
        lock (changing)
        {
            if (queue.Remove(waiter))
            {
                end();
            }
        }
    }

    private void Settle()
    {
        while (stays.Count < count && TryAdmitNext())
        {
        }

        while (NextToLeave() is { } stay)
        {
            stay.BidToLeave();
        }
    }

    private bool TryAdmitNext()
    {
        var batch = batches.FirstOrDefault(one => BatchMayStay || one.MayLodge);
        var single = singles.First?.Value;
        if (single is not null && !(batch is not null && BatchMayStay && singlesInARow >= MostSinglesInARow))
        {
            singlesInARow = batch is null ? 0 : singlesInARow + 1;
            Admit(singles, single, Tenure.Single);
        }
        else if (batch is not null)
        {
            singlesInARow = 0;
            Admit(batches, batch, BatchMayStay ? Tenure.Batch : Tenure.Lodger);
        }

        return single is not null || batch is not null;
    }

    private void Admit(LinkedList<Waiter> queue, Waiter waiter, Tenure tenure)
    {
        queue.Remove(waiter);
        waiter.SetResult(Add(tenure));
    }

    private SolveStay Add(Tenure tenure)
    {
        var stay = new SolveStay(this, tenure);
        stays.Add(stay);
        return stay;
    }

    /// <summary>Somebody who must make room for those who wait: first work that nobody waits for, then the latest lodger.</summary>
    private SolveStay? NextToLeave()
    {
        var leaving = stays.Count(stay => stay.IsBiddenToLeave);
        return stays.FindLast(stay => stay is { Tenure: Tenure.Aside, IsBiddenToLeave: false } && leaving < singles.Count + batches.Count)
            ?? stays.FindLast(stay => stay is { IsOnSufferance: true, IsBiddenToLeave: false } && leaving < singles.Count);
    }

    /// <summary>Somebody who waits for a place.</summary>
    private sealed class Waiter(bool mayLodge, long since) : TaskCompletionSource<SolveStay>(TaskCreationOptions.RunContinuationsAsynchronously)
    {
        public bool MayLodge => mayLodge;

        /// <summary>A timestamp of the clock.</summary>
        public long Since => since;
    }
}
