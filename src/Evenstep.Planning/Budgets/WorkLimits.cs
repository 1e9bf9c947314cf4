namespace Evenstep.Planning.Budgets;

/// <summary>What one request may take at most.</summary>
/// <param name="Units">Deterministic work, counted and not clocked: a unit takes about a second on a usual core. The same work
/// on any machine.</param>
/// <param name="Bytes">Memory held at one time, beyond the request itself.</param>
public sealed record WorkLimits(double Units, long Bytes = WorkLimits.UsualBytes)
{
    private const double UsualUnits = 5;
    private const long UsualBytes = 256L * 1024 * 1024;

    /// <summary>About 5 s and 256 MiB.</summary>
    public static readonly WorkLimits Usual = new(UsualUnits);
}

/// <summary>Which limit ended a work before it was done.</summary>
public enum ReachedLimit
{
    /// <summary>The deterministic work.</summary>
    Work,

    /// <summary>The memory held at one time.</summary>
    Memory,
}
