namespace Evenstep.Service.Recommendations;

/// <summary>Lets only as many solves run at once as there are processors: more would only slow each other down.</summary>
internal sealed class SolveGate
{
    private readonly SolvePlaces places;

    public SolveGate(Patience patience)
        : this(Environment.ProcessorCount, patience)
    {
    }

    /// <summary>With a number of places of its own.</summary>
    internal SolveGate(int count, Patience patience) => places = new SolvePlaces(count, patience, TimeProvider.System);

    public int InUse => places.InUse;

    public int Waiting => places.Waiting;

    public Task<T> RunAsync<T>(Func<T> solve, CancellationToken gone) => RunAsync(_ => solve(), Lane.Single, gone);

    /// <summary>Runs a solve once there is a place for it.</summary>
    /// <param name="solve">The solve. Its token is cancelled when it must end; in a batch it may then be run again from the beginning.</param>
    /// <param name="lane">Who waits for it.</param>
    /// <param name="gone">Nobody waits any more.</param>
    /// <exception cref="SaturatedException">There is too much to do.</exception>
    public async Task<T> RunAsync<T>(Func<CancellationToken, T> solve, Lane lane, CancellationToken gone)
    {
        for (var mayLodge = true; ; mayLodge = false)
        {
            using var stay = await places.TakeAsync(lane, mayLodge, gone);
            using var end = CancellationTokenSource.CreateLinkedTokenSource(stay.Leave, gone);
            try
            {
                return solve(end.Token);
            }
            catch (OperationCanceledException) when (stay.Leave.IsCancellationRequested && !gone.IsCancellationRequested)
            {
                // It gave way, and begins again in a place where it need not.
            }
        }
    }

    /// <summary>Runs work that nobody waits for, if a place is free.</summary>
    /// <param name="work">The work. Its token is cancelled when a solve wants the place, and it must then end at once.</param>
    /// <param name="stopping">Ends the work too.</param>
    /// <returns>Whether a place was free.</returns>
    public bool TryRunAside(Action<CancellationToken> work, CancellationToken stopping)
    {
        using var stay = places.TryTakeAside();
        if (stay is null)
        {
            return false;
        }

        using var end = CancellationTokenSource.CreateLinkedTokenSource(stay.Leave, stopping);
        work(end.Token);
        return true;
    }
}
