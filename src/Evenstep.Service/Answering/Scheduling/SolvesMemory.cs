namespace Evenstep.Service.Answering.Scheduling;

/// <summary>
/// The memory of the solves under way. There is always room left for the eldest of them to take as much as one may, so that
/// it can end and give back what it holds; the others go on only while they leave it that room. What is at the first level
/// holds too little to count yet.
/// </summary>
/// <param name="settings">What they may hold together, and each alone.</param>
internal sealed class SolvesMemory(SchedulerSettings settings)
{
    /// <summary>In the order in which they began.</summary>
    private readonly List<ScheduledSolve> begun = [];

    /// <summary>In bytes.</summary>
    public long Held => begun.Sum(solve => solve.Held);

    public void Enter(ScheduledSolve solve)
    {
        if (!solve.IsBackground)
        {
            begun.Add(solve);
        }
    }

    public void Leave(ScheduledSolve solve) => begun.Remove(solve);

    public bool HasRoomFor(ScheduledSolve solve) => solve.IsBackground || solve.Level == 0 || begun.Count == 0 || solve == begun[0]
        || Held - begun[0].Held + settings.SolveBytes <= settings.MostBytes;
}
