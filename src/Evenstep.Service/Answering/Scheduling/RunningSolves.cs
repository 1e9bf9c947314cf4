namespace Evenstep.Service.Answering.Scheduling;

/// <summary>The solves that have a slot, and how many slots others find taken.</summary>
/// <param name="slots">How many solves may run at once.</param>
/// <param name="clock">Tells since when one has not been heard of.</param>
internal sealed class RunningSolves(int slots, TimeProvider clock)
{
    /// <summary>A solve that was not heard of for so long is in the hands of the solver. Its slot is lent to one with a better claim.</summary>
    public static readonly TimeSpan Silence = TimeSpan.FromMilliseconds(10);

    /// <summary>So many slots are lent for each that there is: what is lent to may fall silent too.</summary>
    private const int MostLentPerSlot = 2;

    private readonly List<ScheduledSolve> running = [];

    public int Count => running.Count;

    public void Add(ScheduledSolve solve) => running.Add(solve);

    public void Remove(ScheduledSolve solve) => running.Remove(solve);

    /// <summary>How many slots a solve of such a rank finds taken: one that is silent is free for whoever has a better claim.</summary>
    public int SlotsTakenFrom(int rank)
    {
        var (taken, lent) = (0, 0);
        foreach (var solve in running)
        {
            var silentFor = clock.GetElapsedTime(solve.Since);
            var isLent = !solve.IsBackground && silentFor >= Silence && rank < solve.RankAfter(silentFor) && lent < MostLentPerSlot * slots;
            lent += isLent ? 1 : 0;
            taken += isLent || solve.IsBackground ? 0 : 1;
        }

        return taken;
    }
}
