namespace Evenstep.Service.Answering.Scheduling;

/// <summary>Lets one thread wait for another. It blocks at once, for on a single processor whoever spins keeps the other from coming.</summary>
internal sealed class Signal
{
    private readonly object turn = new();
    private bool isSet;

    public void Set()
    {
        lock (turn)
        {
            isSet = true;
            Monitor.Pulse(turn);
        }
    }

    /// <summary>Waits for a signal and takes it.</summary>
    /// <exception cref="OperationCanceledException">Somebody has cancelled before it came.</exception>
    public void Wait(CancellationToken cancellationToken)
    {
        using var registration = cancellationToken.UnsafeRegister(_ => Wake(), null);
        lock (turn)
        {
            while (!isSet)
            {
                cancellationToken.ThrowIfCancellationRequested();
                Monitor.Wait(turn);
            }

            isSet = false;
        }
    }

    /// <summary>Waits for a signal for so long, and takes it. False if there was none.</summary>
    public bool Wait(TimeSpan time)
    {
        lock (turn)
        {
            if (!isSet)
            {
                Monitor.Wait(turn, time);
            }

            var wasSet = isSet;
            isSet = false;
            return wasSet;
        }
    }

    private void Wake()
    {
        lock (turn)
        {
            Monitor.PulseAll(turn);
        }
    }
}
