namespace Evenstep.Planning.Budgets;

/// <summary>
/// What a request may still do and hold. Everything that takes time is counted in steps, each about as long as the next, so
/// that the same work always ends at the same place; everything that takes memory is held before it is made. A budget belongs
/// to one thread.
/// </summary>
public sealed class WorkBudget
{
    /// <summary>Steps of a unit of work: a step is about two and a half nanoseconds on a usual core, such as one comparison of two views.</summary>
    public const double StepsPerUnit = 375_000_000;

    /// <summary>Between two looks whether somebody has cancelled, or wants to go first: about a millisecond.</summary>
    private const long StepsBetweenLooks = 500_000;

    /// <summary>More is held only where it must be.</summary>
    private const long MostBytesKept = 32L * 1024 * 1024;

    private readonly WorkBudget? whole;
    private readonly Action? checkpoint;
    private readonly long bytes;
    private long stepsLeft;
    private long sinceLook;
    private long held;

    /// <param name="limits">What may be done and held.</param>
    /// <param name="checkpoint">Called at every look, on the working thread. It may block while others go first.</param>
    /// <param name="cancellationToken">Ends the work at its next look.</param>
    public WorkBudget(WorkLimits limits, Action? checkpoint = null, CancellationToken cancellationToken = default)
    {
        stepsLeft = StepsOf(limits.Units);
        bytes = limits.Bytes;
        CancellationToken = cancellationToken;
        this.checkpoint = checkpoint;
    }

    /// <summary>A budget of so many units of work and the usual memory.</summary>
    public WorkBudget(double units, CancellationToken cancellationToken = default)
        : this(WorkLimits.Usual with { Units = units }, checkpoint: null, cancellationToken)
    {
    }

    private WorkBudget(WorkBudget whole, double units)
    {
        this.whole = whole;
        stepsLeft = Math.Min(StepsOf(units), whole.stepsLeft);
        CancellationToken = whole.CancellationToken;
    }

    public CancellationToken CancellationToken { get; }

    /// <summary>The limit that was reached; null while there is something left of both.</summary>
    public ReachedLimit? Reached { get; private set; }

    public bool IsSpent => Reached is not null;

    /// <summary>The work that is left, in units; never negative.</summary>
    public double UnitsLeft => Math.Max(0, stepsLeft) / StepsPerUnit;

    /// <summary>The memory held now, in bytes.</summary>
    public long Held => Root.held;

    /// <summary>A budget of at most so much of the work that is left, to be spent apart: what it spends and holds counts here
    /// too, but where it ends this one goes on.</summary>
    public WorkBudget Part(double units) => new(this, units);

    /// <summary>Counts work that is done, or is about to be.</summary>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public void Spend(long steps)
    {
        stepsLeft -= steps;
        if (stepsLeft <= 0)
        {
            Reached ??= ReachedLimit.Work;
        }

        if (whole is not null)
        {
            whole.Spend(steps);
            return;
        }

        sinceLook += steps;
        if (sinceLook >= StepsBetweenLooks)
        {
            sinceLook = 0;
            Look();
        }
    }

    /// <summary>Counts work in units, such as that of a constraint solver, and looks.</summary>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public void SpendUnits(double units) => Spend(StepsOf(units));

    /// <summary>Whether somebody has cancelled, or wants to go first.</summary>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public void Look()
    {
        CancellationToken.ThrowIfCancellationRequested();
        if (whole is not null)
        {
            whole.Look();
            return;
        }

        checkpoint?.Invoke();
        CancellationToken.ThrowIfCancellationRequested();
    }

    /// <summary>Asks for memory before it is taken. False if there is not so much left: then it must not be taken, and the
    /// work of this budget ends.</summary>
    public bool TryHold(long more)
    {
        var root = Root;
        if (root.held + more > root.bytes)
        {
            Reached ??= ReachedLimit.Memory;
            return false;
        }

        root.held += more;
        return true;
    }

    /// <summary>Whether little is held yet: what could be made again is only kept then. Half of the memory, or more, is left for
    /// what must be held, and many requests beside one another keep no more than a process should take.</summary>
    /// <param name="more">What is to be kept.</param>
    public bool MayKeep(long more) => Root.held + more <= Math.Min(Root.bytes / 2, MostBytesKept);

    /// <summary>Counts work that cannot be left half done.</summary>
    /// <exception cref="WorkEndedException">Nothing is left.</exception>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    internal void Use(long steps)
    {
        Spend(steps);
        if (IsSpent)
        {
            throw new WorkEndedException();
        }
    }

    /// <summary>Asks for memory without which the work cannot go on.</summary>
    /// <exception cref="WorkEndedException">There is not so much left.</exception>
    internal void Hold(long more)
    {
        if (!TryHold(more))
        {
            throw new WorkEndedException();
        }
    }

    /// <summary>Gives back memory that was asked for.</summary>
    public void Release(long less) => Root.held -= less;

    private WorkBudget Root => whole?.Root ?? this;

    private static long StepsOf(double units) => (long)Math.Min(units * StepsPerUnit, long.MaxValue / 4);
}
