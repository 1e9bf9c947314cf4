namespace Evenstep.Service.Answering.Scheduling;

/// <summary>A solve as the scheduler sees it. All but what it is made with changes under the scheduler's lock.</summary>
/// <param name="claim">For whom it is.</param>
/// <param name="grant">Gives it a slot: begins it, or lets it go on. It must return at once.</param>
internal sealed class ScheduledSolve(SolveClaim claim, Action grant)
{
    public SolveClaim Claim => claim;

    public bool IsBackground => claim.Priority == SolvePriority.Background;

    public CallerShare? Share { get; set; }

    /// <summary>When it came, among all.</summary>
    public long Number { get; set; }

    /// <summary>Its turn among those of the same caller and level.</summary>
    public long Turn { get; set; }

    public bool HasBegun { get; set; }

    public bool IsRunning { get; set; }

    /// <summary>Whether it runs because others would go first for ever.</summary>
    public bool IsOwed { get; set; }

    /// <summary>A timestamp: since when it waits, or when it was last heard of while running.</summary>
    public long Since { get; set; }

    /// <summary>How long it has run since it got its slot.</summary>
    public TimeSpan InSlice { get; set; }

    /// <summary>The memory it holds, in bytes.</summary>
    public long Held { get; set; }

    public int Level => SolveLevels.Of(claim.Ran);

    /// <summary>Priority and level in one: the less, the better its claim.</summary>
    public int Rank => RankAfter(TimeSpan.Zero);

    /// <summary>The same once it has run for so much longer.</summary>
    public int RankAfter(TimeSpan more) => ((int)claim.Priority * SolveLevels.Count) + SolveLevels.Of(claim.Ran + more);

    /// <summary>Whether it, which waits, takes the slot of one that runs.</summary>
    public bool TakesSlotOf(ScheduledSolve runs) =>
        Rank != runs.Rank ? Rank < runs.Rank : runs.InSlice >= SolveLevels.Slice && Share!.Ran < runs.Share!.Ran;

    public void Grant() => grant();
}
