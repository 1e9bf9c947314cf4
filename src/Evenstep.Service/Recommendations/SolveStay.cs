namespace Evenstep.Service.Recommendations;

/// <summary>On what terms a place is held.</summary>
internal enum Tenure
{
    /// <summary>By a single request, to its end.</summary>
    Single,

    /// <summary>By a batch, to the solve's end.</summary>
    Batch,

    /// <summary>By a batch, until a single request wants the place.</summary>
    Lodger,

    /// <summary>By work that nobody waits for, until any solve wants the place.</summary>
    Aside,
}

/// <summary>A place that is taken until this is disposed of.</summary>
internal sealed class SolveStay(SolvePlaces places, Tenure tenure) : IDisposable
{
    private readonly CancellationTokenSource leave = new();

    public Tenure Tenure => tenure;

    /// <summary>Whether whoever holds the place can be bidden to leave it.</summary>
    public bool IsOnSufferance => tenure is Tenure.Lodger or Tenure.Aside;

    public bool IsBiddenToLeave => leave.IsCancellationRequested;

    /// <summary>Cancelled when the place must be left.</summary>
    public CancellationToken Leave => leave.Token;

    public void BidToLeave() => leave.Cancel();

    public void Dispose()
    {
        places.Free(this);
        leave.Dispose();
    }
}
