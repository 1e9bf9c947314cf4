namespace Evenstep.Service.Answering.Scheduling;

/// <summary>The solves that wait for a slot, to begin or to go on, and which of them has the best claim.</summary>
/// <param name="slots">How many solves may run at once.</param>
/// <param name="memory">What they may hold together.</param>
internal sealed class WaitingSolves(int slots, SolvesMemory memory)
{
    /// <summary>So many solves of one caller's batches are begun for each slot; the others wait before they begin.</summary>
    private const int MostBegunOfBatchPerSlot = 4;

    private readonly List<ScheduledSolve> waiting = [];

    public int Count => waiting.Count;

    /// <summary>The one in the background that waits longest; null if there is none.</summary>
    public ScheduledSolve? Background => waiting.Find(solve => solve.IsBackground);

    public bool HasForeground => waiting.Exists(solve => !solve.IsBackground);

    public void Add(ScheduledSolve solve) => waiting.Add(solve);

    public void Remove(ScheduledSolve solve) => waiting.Remove(solve);

    public bool Contains(ScheduledSolve solve) => waiting.Contains(solve);

    /// <summary>Of those who may run, but for the background, the one with the best claim.</summary>
    public ScheduledSolve? Best()
    {
        ScheduledSolve? best = null;
        foreach (var solve in waiting)
        {
            if (MayRun(solve) && (best is null || Compare(solve, best) < 0))
            {
                best = solve;
            }
        }

        return best;
    }

    /// <summary>Of those with a worse claim than such a rank gives, the one that has waited longest.</summary>
    public ScheduledSolve? PassedOver(int rank)
    {
        ScheduledSolve? longest = null;
        foreach (var solve in waiting)
        {
            if (solve.Rank > rank && MayRun(solve) && (longest is null || solve.Since < longest.Since))
            {
                longest = solve;
            }
        }

        return longest;
    }

    private bool MayRun(ScheduledSolve solve) => !solve.IsBackground
        && (solve.HasBegun || solve.Claim.Priority != SolvePriority.Batch || solve.Share!.Begun < MostBegunOfBatchPerSlot * slots)
        && memory.HasRoomFor(solve);

    private static int Compare(ScheduledSolve one, ScheduledSolve other) =>
        one.Rank != other.Rank ? one.Rank.CompareTo(other.Rank)
        : one.Share!.Ran != other.Share!.Ran ? one.Share.Ran.CompareTo(other.Share.Ran)
        : one.Turn.CompareTo(other.Turn);
}
