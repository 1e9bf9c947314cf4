namespace Evenstep.Service.Recommendations;

/// <summary>Lets only as many solves run at once as there are processors: more would only slow each other down.</summary>
internal sealed class SolveGate : IDisposable
{
    private readonly SemaphoreSlim places = new(Environment.ProcessorCount);

    public async Task<T> RunAsync<T>(Func<T> solve, CancellationToken cancellation)
    {
        await places.WaitAsync(cancellation);
        try
        {
            return solve();
        }
        finally
        {
            places.Release();
        }
    }

    public void Dispose() => places.Dispose();
}
