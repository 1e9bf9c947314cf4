namespace Evenstep.Service.Answering.Scheduling;

/// <summary>The levels of the multilevel feedback queue: the longer something has run, the lower it stands, so that what is
/// short is soon over without anybody having to know beforehand what is short.</summary>
internal static class SolveLevels
{
    public const int Count = 4;
    public const int Last = Count - 1;

    /// <summary>So long somebody runs before another caller's turn comes at the same level.</summary>
    public static readonly TimeSpan Slice = TimeSpan.FromMilliseconds(2);

    /// <summary>Whoever has run so long leaves the first, the second and the third level. Most requests end within the first.</summary>
    private static readonly TimeSpan[] Ends = [TimeSpan.FromMilliseconds(4), TimeSpan.FromMilliseconds(40), TimeSpan.FromMilliseconds(400)];

    /// <summary>The level of what has run so long, from 0.</summary>
    public static int Of(TimeSpan ran)
    {
        var level = 0;
        while (level < Last && ran >= Ends[level])
        {
            level++;
        }

        return level;
    }
}
