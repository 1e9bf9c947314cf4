namespace Evenstep.Service.Answering.Scheduling;

/// <summary>For whom solves are made and how urgent they are, and what they have taken. A request has one, a line of a batch too.</summary>
/// <param name="caller">Whoever shares what callers get: a key, or an address where there are no keys.</param>
/// <param name="priority">How urgent it is.</param>
internal sealed class SolveClaim(string caller, SolvePriority priority)
{
    /// <summary>What is done in the background, for nobody.</summary>
    public static readonly SolveClaim Background = new("", SolvePriority.Background);

    private static readonly AsyncLocal<SolveClaim?> OfRequest = new();

    private readonly Lock changing = new();
    private double unitsSpent;

    /// <summary>The claim of the request at hand. It flows with the execution context.</summary>
    public static SolveClaim Current
    {
        get => OfRequest.Value ?? new SolveClaim("", SolvePriority.Single);
        set => OfRequest.Value = value;
    }

    public string Caller => caller;

    public SolvePriority Priority => priority;

    /// <summary>How long its solves have run. Changed by the scheduler alone, under its lock.</summary>
    public TimeSpan Ran { get; set; }

    /// <summary>The work that its solves have done, in the units of <see cref="Planning.Budgets.WorkLimits"/>.</summary>
    public double UnitsSpent
    {
        get
        {
            lock (changing)
            {
                return unitsSpent;
            }
        }
    }

    /// <summary>The claim of a line of a batch that this caller sends.</summary>
    public SolveClaim OfBatchLine() => new(caller, SolvePriority.Batch);

    public void Spend(double units)
    {
        lock (changing)
        {
            unitsSpent += units;
        }
    }
}
