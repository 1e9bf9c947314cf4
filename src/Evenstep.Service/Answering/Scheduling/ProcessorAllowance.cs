namespace Evenstep.Service.Answering.Scheduling;

/// <summary>
/// A token bucket of processor time: over any stretch no more than a share of it is spent, and at most <see cref="Most"/>
/// besides. It is charged afterwards, and so may be overdrawn, which is paid back first.
/// </summary>
/// <param name="share">The share of one processor, from 0 to 1.</param>
/// <param name="clock">Fills it.</param>
internal sealed class ProcessorAllowance(double share, TimeProvider clock)
{
    public static readonly TimeSpan Most = TimeSpan.FromMilliseconds(10);

    private TimeSpan left = Most;
    private long filled = clock.GetTimestamp();

    public bool IsEmpty => Left() <= TimeSpan.Zero;

    public void Take(TimeSpan time) => left = Left() - time;

    /// <summary>How long until so much is there; null if never.</summary>
    public TimeSpan? TimeUntil(TimeSpan wanted)
    {
        var missing = wanted - Left();
        return missing <= TimeSpan.Zero ? TimeSpan.Zero : share > 0 ? missing / share : null;
    }

    private TimeSpan Left()
    {
        var now = clock.GetTimestamp();
        var more = left + (clock.GetElapsedTime(filled, now) * share);
        left = more < Most ? more : Most;
        filled = now;
        return left;
    }
}
