namespace Evenstep.Service.Answering.Scheduling;

/// <summary>Threads for solves, which may block for long and must not take those that receive requests and send answers. A
/// thread that has nothing to do is used again, and ends after a while.</summary>
internal sealed class SolveThreads
{
    private const string Name = "solve";

    private static readonly TimeSpan KeptIdle = TimeSpan.FromSeconds(20);

    private readonly Lock changing = new();
    private readonly List<Idle> idle = [];

    /// <summary>Runs work on a thread of its own. It must not throw.</summary>
    public void Run(Action work)
    {
        lock (changing)
        {
            if (idle.Count > 0)
            {
                // The one that became idle last: its memory is at hand, and the others may end.
                var last = idle[^1];
                idle.RemoveAt(idle.Count - 1);
                last.Work = work;
                last.Wake.Set();
                return;
            }
        }

        new Thread(() => RunAll(work)) { IsBackground = true, Name = Name }.Start();
    }

    private void RunAll(Action first)
    {
        var me = new Idle { Work = first };
        do
        {
            me.Work!();
            me.Work = null;
        }
        while (GetsMore(me));
    }

    private bool GetsMore(Idle me)
    {
        lock (changing)
        {
            idle.Add(me);
        }

        if (me.Wake.Wait(KeptIdle))
        {
            return true;
        }

        lock (changing)
        {
            if (idle.Remove(me))
            {
                return false;
            }
        }

        // It has just got work.
        return me.Wake.Wait(Timeout.InfiniteTimeSpan);
    }

    private sealed class Idle
    {
        public Signal Wake { get; } = new();

        public Action? Work { get; set; }
    }
}
