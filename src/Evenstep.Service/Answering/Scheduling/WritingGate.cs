using Evenstep.Planning.Budgets;

namespace Evenstep.Service.Answering.Scheduling;

/// <summary>
/// Has what is said of a plan worked out and written where solves run: it takes up to a second and some hundred megabytes with
/// the largest kits, so that only as many are at it as there are processors, and whoever left is not worked for.
/// </summary>
internal sealed class WritingGate(SolveGate gate, WorkLimits limits)
{
    /// <param name="write">Writes the answer; its budget counts the work and sees cancellation, and cuts nothing short: what may
    /// be said of one plan is bounded by what a request may hold.</param>
    /// <param name="cancellationToken">Nobody waits any more.</param>
    public Task<T> WriteAsync<T>(Func<WorkBudget, T> write, CancellationToken cancellationToken) =>
        gate.RunAsync(slot => write(slot.Budget(limits)), cancellationToken);
}
