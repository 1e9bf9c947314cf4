namespace Evenstep.Benchmarks.Http;

/// <summary>Requests to be kept up for a while, one after another on each connection.</summary>
/// <param name="Target">Where they are posted to.</param>
/// <param name="Bodies">Posted in turn.</param>
/// <param name="Connections">At the same time.</param>
/// <param name="Time">How long.</param>
internal sealed record Load(Uri Target, IReadOnlyList<string> Bodies, int Connections, TimeSpan Time);

/// <summary>What came of a load.</summary>
/// <param name="Requests">Answered.</param>
/// <param name="Failures">Of them, not answered with success, or not at all.</param>
/// <param name="P50Ms">Median time to an answer.</param>
/// <param name="P99Ms">The slowest hundredth begins here.</param>
/// <param name="PerSecond">Answers a second.</param>
internal sealed record LoadResult(int Requests, int Failures, double P50Ms, double P99Ms, double PerSecond);

/// <summary>What makes a load.</summary>
internal interface ILoadTool
{
    string Name { get; }

    /// <summary>What a reader of its figures should know; empty if nothing.</summary>
    string Remark { get; }

    Task<LoadResult> RunAsync(Load load);
}
